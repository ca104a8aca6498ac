// Colours and strokes of the drawings. Nothing is told by colour alone: shapes, letters and patterns say the same.
import { sizes } from './text.ts';

export type Theme = 'light' | 'dark' | 'contrast' | 'contrast-light' | 'print';

/** What a colour is for. */
export interface Palette {
  readonly paper: string;
  /** Text, and what stands on `paper` as text does. */
  readonly ink: string;
  readonly quiet: string;
  /** Outlines and axes. */
  readonly line: string;
  /** Grids and soft surfaces: they carry nothing that is not said elsewhere. */
  readonly faint: string;
  readonly soft: string;
  readonly leaf: string;
  readonly drive: string;
  readonly field: string;
  readonly sound: string;
  readonly alert: string;
  readonly run: string;
  readonly slow: string;
  readonly seat: string;
  readonly lamp: string;
  /** Text and strokes on the coloured surfaces above. */
  readonly over: string;
  /** What is chosen. */
  readonly lit: string;
}

/** Colours that letters are written in, on `paper`. */
export const textColours = ['ink', 'quiet', 'sound', 'alert', 'field', 'drive'] as const satisfies readonly (keyof Palette)[];
/** Colours of what has to be seen on `paper`. */
export const graphicColours = [
  'line',
  'leaf',
  'drive',
  'field',
  'sound',
  'alert',
  'run',
  'slow',
  'seat',
  'lamp',
  'lit',
] as const satisfies readonly (keyof Palette)[];
/** Surfaces that carry letters or strokes in `over`. */
export const underColours = ['leaf', 'alert', 'run', 'slow', 'seat', 'lamp'] as const satisfies readonly (keyof Palette)[];

export const palettes: Readonly<Record<Theme, Palette>> = {
  light: {
    paper: '#ffffff',
    ink: '#1b222c',
    quiet: '#525c69',
    line: '#6b7683',
    faint: '#d9dee4',
    soft: '#eef2f7',
    leaf: '#33414f',
    drive: '#85490b',
    field: '#076586',
    sound: '#1d6b3c',
    alert: '#b0201a',
    run: '#2a5d9f',
    slow: '#9a5a00',
    seat: '#6a4499',
    lamp: '#7a6200',
    over: '#ffffff',
    lit: '#c2188b',
  },
  dark: {
    paper: '#1d2127',
    ink: '#e9ecf0',
    quiet: '#b4bcc7',
    line: '#8f99a6',
    faint: '#39414b',
    soft: '#272d36',
    leaf: '#c5d0dc',
    drive: '#e5a95c',
    field: '#5fbbe4',
    sound: '#72cf93',
    alert: '#ff8f85',
    run: '#84b6f4',
    slow: '#efb662',
    seat: '#c6abf1',
    lamp: '#e2cf5e',
    over: '#12161b',
    lit: '#ff7ac6',
  },
  contrast: {
    paper: '#000000',
    ink: '#ffffff',
    quiet: '#ffffff',
    line: '#ffffff',
    faint: '#6a6a6a',
    soft: '#141414',
    leaf: '#ffffff',
    drive: '#ffc26b',
    field: '#4fd6ff',
    sound: '#5dff93',
    alert: '#ff9d94',
    run: '#9cc9ff',
    slow: '#ffd07a',
    seat: '#dcc4ff',
    lamp: '#fff176',
    over: '#000000',
    lit: '#ffff00',
  },
  'contrast-light': {
    paper: '#ffffff',
    ink: '#000000',
    quiet: '#000000',
    line: '#000000',
    faint: '#9a9a9a',
    soft: '#f0f0f0',
    leaf: '#000000',
    drive: '#5c2f00',
    field: '#003f57',
    sound: '#00441b',
    alert: '#8a0000',
    run: '#0b3168',
    slow: '#5c3500',
    seat: '#3d1a66',
    lamp: '#463800',
    over: '#ffffff',
    lit: '#8a0060',
  },
  print: {
    paper: '#ffffff',
    ink: '#000000',
    quiet: '#3a3a3a',
    line: '#4d4d4d',
    faint: '#cfcfcf',
    soft: '#f3f3f3',
    leaf: '#1f1f1f',
    drive: '#333333',
    field: '#2b2b2b',
    sound: '#222222',
    alert: '#000000',
    run: '#3b3b3b',
    slow: '#555555',
    seat: '#6a6a6a',
    lamp: '#616161',
    over: '#ffffff',
    lit: '#000000',
  },
};

const font = 'system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';

/** Every class that a drawing uses, with `$name` for a colour. */
const rules: readonly (readonly [selector: string, declarations: string])[] = [
  ['', `font-family: ${font}; color: $ink; background: $paper`],
  [' text', 'fill: $ink; stroke: none'],
  [' .paper', 'fill: $paper; stroke: none'],
  [' .small', `font-size: ${sizes.small}px`],
  [' .normal', `font-size: ${sizes.normal}px`],
  [' .large', `font-size: ${sizes.large}px; font-weight: 600`],
  [' .strong', 'font-weight: 600'],
  [' .quiet', 'fill: $quiet'],
  [' .in-sound', 'fill: $sound; stroke: none'],
  [' .in-alert', 'fill: $alert; stroke: none'],
  [' .in-field', 'fill: $field; stroke: none'],
  [' .in-drive', 'fill: $drive; stroke: none'],
  [' .in-over', 'fill: $over; stroke: none'],
  [' .halo', 'fill: $paper; stroke: none; fill-opacity: 0.85'],
  [' .hit', 'fill: none; stroke: none; pointer-events: all'],
  [' .lead', 'fill: none; stroke: $line; stroke-width: 1'],
  [' .axis', 'fill: none; stroke: $line; stroke-width: 1.2'],
  [' .grid', 'fill: none; stroke: $faint; stroke-width: 1'],
  [' .soft', 'fill: $soft; stroke: none'],
  [' .arrow', 'fill: $line; stroke: none'],
  [' .bar', 'fill: $ink; stroke: none'],
  [' .bar-open', 'fill: $paper; stroke: $ink; stroke-width: 1'],
  // The plan.
  [' .ground', 'fill: none; stroke: $line; stroke-width: 1; stroke-dasharray: 10 5 2 5'],
  [' .post', 'fill: $faint; stroke: $line; stroke-width: 1.2'],
  [' .strokes', 'fill: none; stroke: $line; stroke-width: 1'],
  [' .swept', 'fill: $soft; stroke: none'],
  [' .swept-edge', 'fill: none; stroke: $line; stroke-width: 1; stroke-dasharray: 5 4'],
  [' .leaf', 'fill: $leaf; stroke: $leaf; stroke-width: 1'],
  [' .leaf-open', 'fill: none; stroke: $leaf; stroke-width: 1.4; stroke-dasharray: 6 4'],
  [' .pin', 'fill: $paper; stroke: $leaf; stroke-width: 1.6'],
  [' .drive', 'fill: none; stroke: $drive; stroke-width: 2.4; stroke-linecap: round'],
  [' .drive-body', 'fill: none; stroke: $drive; stroke-width: 6; stroke-linecap: butt'],
  [' .drive-open', 'fill: none; stroke: $drive; stroke-width: 1.2; stroke-dasharray: 4 3'],
  [' .drive-pin', 'fill: $paper; stroke: $drive; stroke-width: 1.8'],
  [' .wall', 'fill: none; stroke: $ink; stroke-width: 2'],
  [' .beam', 'fill: none; stroke: $field; stroke-width: 2; stroke-dasharray: 12 4 3 4'],
  [' .eye', 'fill: $field; stroke: none'],
  [' .edge', 'fill: $field; stroke: $paper; stroke-width: 0.8'],
  [' .presence', 'fill: none; stroke: $field; stroke-width: 1.4; stroke-dasharray: 3 3'],
  [' .presence-strokes', 'fill: none; stroke: $field; stroke-width: 0.8'],
  [' .loop', 'fill: none; stroke: $field; stroke-width: 1.6'],
  [' .covered', 'fill: $paper; stroke: $sound; stroke-width: 2'],
  [' .covered-tick', 'fill: none; stroke: $sound; stroke-width: 2'],
  [' .bare', 'fill: $alert; stroke: $alert; stroke-width: 1'],
  [' .guessed', 'fill: $paper; stroke: $quiet; stroke-width: 1.3; stroke-dasharray: 2 2'],
  // The timing chart.
  [' .run', 'fill: $run; stroke: $run; stroke-width: 1'],
  [' .slow', 'fill: $paper; stroke: $slow; stroke-width: 1.4'],
  [' .slow-strokes', 'fill: none; stroke: $slow; stroke-width: 2'],
  [' .seat', 'fill: $paper; stroke: $seat; stroke-width: 1.4'],
  [' .seat-strokes', 'fill: none; stroke: $seat; stroke-width: 1.6'],
  [' .lamp', 'fill: $lamp; stroke: $lamp; stroke-width: 1'],
  [' .state', 'fill: $soft; stroke: $line; stroke-width: 1'],
  [' .curve', 'fill: none; stroke: $line; stroke-width: 1.4'],
  [' .lag', 'fill: none; stroke: $ink; stroke-width: 1.4'],
  [' .lag-head', 'fill: $ink; stroke: none'],
  [' .least', 'fill: none; stroke: $ink; stroke-width: 1.2; stroke-dasharray: 4 3'],
  [' .break', 'fill: $paper; stroke: $ink; stroke-width: 1.2'],
  // The force window.
  [' .needs', 'fill: none; stroke: $run; stroke-width: 2.2'],
  [' .needs-other', 'fill: none; stroke: $run; stroke-width: 1.6; stroke-dasharray: 7 4'],
  [' .allows', 'fill: none; stroke: $alert; stroke-width: 2.4; stroke-dasharray: 14 3 3 3'],
  [' .allows-other', 'fill: none; stroke: $alert; stroke-width: 2.4; stroke-dasharray: 3 3'],
  [' .between', 'fill: none; stroke: $sound; stroke-width: 1'],
  [' .nothing', 'fill: none; stroke: $alert; stroke-width: 1.2'],
  [' .setting', 'fill: none; stroke: $seat; stroke-width: 2.4'],
  [' .window-edge', 'fill: none; stroke: $sound; stroke-width: 1.4; stroke-dasharray: 20 4'],
  [' .limit', 'fill: none; stroke: $line; stroke-width: 1.2; stroke-dasharray: 2 3'],
  // The wiring.
  [' .strip', 'fill: $soft; stroke: $line; stroke-width: 1'],
  [' .terminal', 'fill: $paper; stroke: $line; stroke-width: 1.2'],
  [' .terminal-free', 'fill: $paper; stroke: $line; stroke-width: 1; stroke-dasharray: 3 3'],
  [' .screw', 'fill: $paper; stroke: $ink; stroke-width: 1.2'],
  [' .box', 'fill: $paper; stroke: $ink; stroke-width: 1.3'],
  [' .wire', 'fill: none; stroke: $ink; stroke-width: 1.6; stroke-linejoin: round'],
  [' .wire-guessed', 'fill: none; stroke: $quiet; stroke-width: 1.3; stroke-dasharray: 5 4'],
  [' .gap', 'fill: none; stroke: $paper; stroke-width: 5'],
  [' .joint', 'fill: $ink; stroke: none'],
  [' .link', 'fill: none; stroke: $drive; stroke-width: 3; stroke-linejoin: round'],
  [' .resistor', 'fill: $paper; stroke: $ink; stroke-width: 1.4'],
  [' .wrong', 'fill: none; stroke: $alert; stroke-width: 2; stroke-dasharray: 6 3'],
  // What stands at the cursor, or is pointed at. The classes are set by whoever shows the drawing.
  [' .pointed > .hit', 'stroke: $lit; stroke-width: 1.4; stroke-dasharray: 4 3'],
  [' .selected > .hit', 'stroke: $lit; stroke-width: 2.2'],
];

const root = '.pintle-drawing';
/** `$name` stands before a letter only; no text from a file comes here. */
const filled = (text: string, colour: (name: keyof Palette) => string): string =>
  text.replace(/\$([a-z]+)/g, (_, name: string) => colour(name as keyof Palette));
const variable = (name: string): string => `--pintle-${name}`;
const variables = (palette: Palette): string =>
  Object.entries(palette)
    .map(([name, value]) => `${variable(name)}: ${value as string}`)
    .join('; ');

/** The style sheet for drawings that stand in a page, whose theme is told by the classes of an editor, by `data-theme`, or by print. */
export const styleSheet = (): string => (sheet ??= buildSheet());
let sheet: string | undefined;

function buildSheet(): string {
  const blocks: (readonly [string, Theme])[] = [
    [`${root}`, 'light'],
    [`.vscode-dark ${root}, [data-theme="dark"] ${root}`, 'dark'],
    [`.vscode-high-contrast ${root}, [data-theme="contrast"] ${root}`, 'contrast'],
    [`.vscode-high-contrast-light ${root}, [data-theme="contrast-light"] ${root}`, 'contrast-light'],
  ];
  const themed = ['.vscode-dark', '.vscode-high-contrast', '.vscode-high-contrast-light', '[data-theme]'];
  const inEditors = themed.map((each) => `${each} ${root}`);
  return [
    ...blocks.map(([selector, theme]) => `${selector} { ${variables(palettes[theme])} }`),
    ...rules.map(([selector, declarations]) => `${root}${selector} { ${filled(declarations, (name) => `var(${variable(name)})`)} }`),
    `@media print { ${[root, ...inEditors].join(', ')} { ${variables(palettes.print)} } }`,
    // Where the reader's own colours are forced on the page, the drawing keeps its own: shapes would vanish.
    `@media (forced-colors: active) { ${root} { forced-color-adjust: none } }`,
  ].join('\n');
}

/** The style of one drawing as a file of its own: plain colours, which programs without custom properties can read too. */
export function plainStyle(theme: Theme): string {
  const palette = palettes[theme];
  return rules
    .filter(([selector]) => !/selected|pointed/.test(selector))
    .map(([selector, declarations]) => `${root}${selector} { ${filled(declarations, (name) => palette[name])} }`)
    .join('\n');
}

/** Contrast of two colours as WCAG 2.1 defines it, 1 to 21. Colours as `#rrggbb`. */
export function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

// What of a drawing is let into the page. The server escapes every text and draws with a few elements only; this list would
// hold even if it did not. Anything not named here is left out.

/** Elements that draw. No `a`, `use`, `image`, `style`, `script`, `foreignObject` and no animation. */
const elements = new Set([
  'svg',
  'g',
  'defs',
  'path',
  'line',
  'polyline',
  'polygon',
  'rect',
  'circle',
  'ellipse',
  'text',
  'tspan',
  'marker',
  'clipPath',
  'pattern',
  'linearGradient',
  'stop',
]);

const attributes = new Set([
  ...['class', 'id', 'data-thing', 'data-moves', 'data-drawing', 'viewBox', 'preserveAspectRatio', 'transform'],
  ...['d', 'points', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'cx', 'cy', 'r', 'rx', 'ry', 'dx', 'dy', 'width', 'height', 'rotate', 'pathLength'],
  ...[
    'fill',
    'fill-opacity',
    'fill-rule',
    'clip-rule',
    'stroke',
    'stroke-width',
    'stroke-opacity',
    'stroke-dasharray',
    'stroke-dashoffset',
    'stroke-linecap',
    'stroke-linejoin',
    'stroke-miterlimit',
    'opacity',
  ],
  ...['vector-effect', 'paint-order', 'clip-path', 'marker-start', 'marker-mid', 'marker-end', 'stop-color', 'stop-opacity', 'offset'],
  ...[
    'text-anchor',
    'dominant-baseline',
    'font-size',
    'font-weight',
    'font-style',
    'font-family',
    'letter-spacing',
    'textLength',
    'lengthAdjust',
  ],
  ...[
    'markerWidth',
    'markerHeight',
    'markerUnits',
    'refX',
    'refY',
    'orient',
    'patternUnits',
    'patternTransform',
    'patternContentUnits',
    'clipPathUnits',
    'gradientUnits',
    'gradientTransform',
  ],
]);

/** Put before every id of a drawing, so that none can stand for a part of the page. */
const prefix = 'drawn-';

export const allowedElement = (name: string): boolean => elements.has(name);

/** The value that an attribute has in the page; undefined where it is left out. */
export function allowedAttribute(name: string, value: string): string | undefined {
  if (!attributes.has(name)) return undefined;
  if (name === 'data-thing' || name === 'data-moves') return value;
  if (name === 'id') return /^[\w.-]+$/.test(value) ? prefix + value : undefined;
  // An address may only lead to a part of the same drawing; a backslash could spell `url` otherwise.
  if (value.includes('\\')) return undefined;
  const led = value.replace(/url\(\s*(["']?)#([\w.-]+)\1\s*\)/gi, (_, _quote, id: string) => `\u0000${id}\u0001`);
  if (/url\s*\(|:\s*\/\/|javascript:|data:|image-set|src\s*\(/i.test(led)) return undefined;
  return led.replace(/\u0000([^\u0001]*)\u0001/g, (_, id: string) => `url(#${prefix}${id})`);
}

// Making elements. Text is only ever set as text.

type Properties = Readonly<Record<string, string | number | boolean | undefined>>;

function setAll(element: Element, properties: Properties): void {
  for (const [name, value] of Object.entries(properties)) {
    if (value === undefined || value === false) element.removeAttribute(name);
    else element.setAttribute(name, value === true ? '' : String(value));
  }
}

export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Properties = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  setAll(element, properties);
  element.append(...children);
  return element;
}

const namespace = 'http://www.w3.org/2000/svg';

export function makeSvg<Name extends keyof SVGElementTagNameMap>(
  name: Name,
  properties: Properties = {},
  ...children: readonly Node[]
): SVGElementTagNameMap[Name] {
  const element = document.createElementNS(namespace, name);
  setAll(element, properties);
  element.append(...children);
  return element;
}

/** A small picture on a button, of strokes on a field of 16 by 16; nothing that is read out. */
export const icon = (strokes: string, filled = false): SVGSVGElement =>
  makeSvg(
    'svg',
    { class: filled ? 'icon filled' : 'icon', viewBox: '0 0 16 16', 'aria-hidden': 'true', focusable: 'false' },
    makeSvg('path', { d: strokes }),
  );

/** A button with words, or with a picture and a name. */
export function button(
  text: string,
  what: () => void,
  { picture, title }: { readonly picture?: SVGSVGElement; readonly title?: string } = {},
): HTMLButtonElement {
  const element = make(
    'button',
    { type: 'button', title: title ?? (picture === undefined ? undefined : text), 'aria-label': picture === undefined ? undefined : text },
    picture ?? text,
  );
  element.addEventListener('click', what);
  return element;
}

/** Sets a text only where it differs, so that nothing is laid out or read out for nothing. */
export function say(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

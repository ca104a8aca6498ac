// Texts that mean harm, as a file or an answer could hold them. Whatever acts counts itself in `harm`.
const act = 'globalThis.harm=(globalThis.harm||0)+1';

/** Markup that acts by itself wherever it is taken for markup. */
export const hostileMarkup = `<img src="https://evil.test/a" onerror="${act}"><svg xmlns="http://www.w3.org/2000/svg" onload="${act}"><image href="https://evil.test/b" onerror="${act}"/><foreignObject><iframe src="https://evil.test/c"></iframe></foreignObject><style>@import "https://evil.test/d"; * { background: url(https://evil.test/e) }</style></svg><link rel="stylesheet" href="https://evil.test/f">`;

/** A site whose every text is such a one. */
export const hostileSite = `language 1
site "<script>${act.replaceAll('"', "'")}</script><img src=x onerror=${act}>" {
  rules europe
  users public
  sight none
  supply 230 V 50 Hz
}
leaf west {
  width 2.50 m
  height 1.80 m
  mass 180 kg
  opens inward 95 deg
}
control fobs "]]></text></svg><img src=x onerror=${act}>" {
  by transmitter
  acts impulse
}
panel box {
  isolator "\u202e</title><script>${act}</script>"
}
measured {
  on 2026-03-09
  by "<svg onload=${act}>"
}
`;

/** An answer as no server of ours would give it: the drawing itself is full of what must not come in. */
export function hostileAnswer(answer) {
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" class="pintle-drawing" viewBox="0 0 100 100" onload="${act}" id="page" style="background: url(https://evil.test/g)">
    <script>${act}</script>
    <script href="https://evil.test/h"/>
    <style>@import url(https://evil.test/i); .paper { fill: url(https://evil.test/j) }</style>
    <a href="javascript:${act}"><text x="10" y="10" data-thing="leaf.a" onclick="${act}">click</text></a>
    <g data-thing="leaf.a" class="thing" tabindex="0" role="button" onfocus="${act}" onpointerover="${act}"><rect x="10" y="20" width="30" height="30" fill="url(https://evil.test/k)" filter="url(https://evil.test/l#f)"/></g>
    <g data-thing="leaf.&quot;]&lt;img src=x onerror=${act}&gt;" class="thing"><rect x="60" y="20" width="30" height="30" onclick="${act}"/></g>
    <use href="https://evil.test/m#n"/><use xlink:href="data:image/svg+xml,&lt;svg onload='${act}'/&gt;"/>
    <image href="https://evil.test/o" width="10" height="10" onerror="${act}"/>
    <foreignObject width="50" height="50"><body xmlns="http://www.w3.org/1999/xhtml"><img src="https://evil.test/p" onerror="${act}"/><iframe src="https://evil.test/q"/></body></foreignObject>
    <animate attributeName="href" values="javascript:${act}"/><set attributeName="onload" to="${act}"/>
    <html:script xmlns:html="http://www.w3.org/1999/xhtml">${act}</html:script>
    <circle cx="50" cy="80" r="5" marker-end="url(&#9;https://evil.test/r#s)" stroke="u\\72l(https://evil.test/t)"/>
  </svg>`;
  const text = hostileMarkup;
  return {
    ...answer,
    title: text,
    drawings: answer.drawings.map(({ id }) => ({
      id,
      title: text,
      description: text,
      svg: drawing,
      table: { caption: text, heads: [text, text], rows: [[text, text]] },
    })),
    things: [
      { id: 'leaf.a', label: text, range: { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } } },
      { id: `leaf."]<img src=x onerror=${act}>`, label: text, range: { start: { line: 2, character: 0 }, end: { line: 3, character: 0 } } },
    ],
    cycle: {
      duration: 10,
      phases: [{ from: 0, to: 10, label: text }],
      leaves: [{ thing: 'leaf.a', motion: { kind: 'turn', x: 0, y: 0 }, times: [0, 10], values: [0, 90] }],
    },
  };
}

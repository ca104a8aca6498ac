// A page as it is shipped: by itself, with the base sites that its examples are from at its end.

const link = /\]\(\.\.\/\.\.\/\.\.\/examples\/bases\/([a-z][a-z0-9-]*)\.gate\)/g;

/** @param baseOf gives the text of a base site. */
export function shipped(page, baseOf) {
  const names = [...new Set([...page.matchAll(link)].map(([, name]) => name))];
  if (names.length === 0) return page;
  const sites = names.map((name) => `### ${name}\n\n\`\`\`gate\n${baseOf(name)}\`\`\`\n`);
  return `${page.replace(link, '](#$1)').trimEnd()}\n\n## Base sites\n\n${sites.join('\n')}`;
}

// The scores as a table, and the survivors as a list, for people.

const killed = (mutant) => mutant.status === 'killed' || mutant.status === 'timed out';
const judged = (mutant) => mutant.status !== undefined;
const roomOf = ({ path }) => path.split('/')[1];
const folderOf = (path) => path.replace(/^server\//, '').replace(/\/(maths|rule|figure)\.ts$|\.ts$/, '');

function row(name, mutants) {
  const dead = mutants.filter(killed).length;
  const times = mutants.filter((mutant) => mutant.status === 'timed out').length;
  const missed = mutants.filter((mutant) => mutant.status === 'not reached').length;
  const score = mutants.length === 0 ? 100 : (100 * dead) / mutants.length;
  const examples = mutants.filter((mutant) => mutant.byExample).length;
  return `| ${name} | ${score.toFixed(1)} | ${mutants.length} | ${dead} | ${times} | ${mutants.length - dead} | ${missed} | ${examples} |`;
}

/** One row for each folder, worst first, below the sum of each room; and the rules of which no example kills a mutant. */
export function scoreTable(mutants) {
  const known = mutants.filter(judged);
  const head =
    '| what | score % | mutants | killed | of these timed out | survived | of these not reached | killed by an example of the page |\n|---|---|---|---|---|---|---|---|';
  const rooms = [...new Set(known.map(roomOf))].map((room) =>
    row(
      `**all of ${room}**`,
      known.filter((mutant) => roomOf(mutant) === room),
    ),
  );
  const sections = [...new Set(known.map((mutant) => mutant.kind))].map((kind) => {
    const own = known.filter((mutant) => mutant.kind === kind);
    const folders = group(own);
    const share = (list) => list.filter(killed).length / list.length;
    const rows = [...folders].sort(([, a], [, b]) => share(a) - share(b)).map(([path, list]) => row(folderOf(path), list));
    return [row(`**${kind}**`, own), ...rows].join('\n');
  });
  const rules = group(known.filter((mutant) => mutant.kind === 'rules'));
  const without = [...rules].filter(([, list]) => !list.some((mutant) => mutant.byExample)).map(([path]) => folderOf(path));
  const pages =
    rules.size === 0
      ? ''
      : `\nRules of which an example of the page kills a mutant: ${rules.size - without.length} of ${rules.size}.${without.length === 0 ? '' : ` Without: ${without.join(', ')}.`}\n`;
  return `${head}\n${rooms.join('\n')}\n${sections.join('\n')}\n${pages}`;
}

function group(mutants) {
  const groups = new Map();
  for (const mutant of mutants) {
    const list = groups.get(mutant.path);
    if (list === undefined) groups.set(mutant.path, [mutant]);
    else list.push(mutant);
  }
  return groups;
}

const short = (text, most) => {
  const line = text.replace(/\s+/g, ' ');
  return line.length <= most ? line : `${line.slice(0, most - 1)}…`;
};

/** Every survivor with its place and what it does, by file. */
export function survivorList(mutants) {
  const groups = group(mutants.filter((mutant) => judged(mutant) && !killed(mutant)));
  return [...groups]
    .map(([path, list]) =>
      [
        `## ${path}`,
        '',
        ...list.map(
          (mutant) =>
            `- ${mutant.line}:${mutant.column} ${mutant.mutator}${mutant.status === 'not reached' ? ' (no test reaches it)' : ''}: \`${short(mutant.was, 100)}\` → \`${short(mutant.becomes, 80)}\``,
        ),
        '',
      ].join('\n'),
    )
    .join('\n');
}

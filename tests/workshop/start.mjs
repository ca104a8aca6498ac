// `npm start`: the main job on the examples, through the very command that a user runs.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const command = join(root, 'dist', 'pintle.cjs');
/** The examples are judged as of this day, so that they say the same for ever. */
const asOf = '2026-11-01';

function pintle(...args) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
  return { status, stdout, stderr };
}

const sitesIn = (folder) =>
  readdirSync(join(root, 'examples', folder))
    .filter((name) => name.endsWith('.gate'))
    .sort()
    .map((name) => `examples/${folder}/${name}`);
const heading = (text) => console.log(`\n${text}\n${'-'.repeat(text.length)}`);

function table(rows) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => String(row[column]).length)));
  for (const row of rows)
    console.log(
      '  ' +
        row
          .map((cell, column) => (typeof cell === 'number' ? String(cell).padStart(widths[column]) : cell.padEnd(widths[column])))
          .join('  ')
          .trimEnd(),
    );
}

const sound = sitesIn('sound');
const unsafe = sitesIn('unsafe');
const wrong = [];

heading(`The example sites, as of ${asOf}`);
const rows = [['site', 'verdict', 'errors', 'warnings', 'notes']];
for (const [site, shouldFail] of [...sound.map((site) => [site, false]), ...unsafe.map((site) => [site, true])]) {
  const { status, stdout, stderr } = pintle('check', site, '--output', 'json', '--as-of', asOf);
  let counts;
  try {
    ({ counts } = JSON.parse(stdout));
  } catch {
    wrong.push(`${site} could not be checked: ${stderr.trim() || `exit code ${status}`}`);
    continue;
  }
  const { error, warning, note } = counts;
  rows.push([site, error > 0 ? 'not safe' : warning > 0 ? 'no errors' : 'no findings', error, warning, note]);
  if (shouldFail !== error > 0)
    wrong.push(
      shouldFail
        ? `${site} is meant to be unsafe, and no error was found in it`
        : `${site} is meant to be sound, and ${error} ${error === 1 ? 'error was' : 'errors were'} found in it`,
    );
  if (status !== (error > 0 ? 1 : 0)) wrong.push(`${site}: the exit code is ${status}`);
}
table(rows);

heading('What is wrong with the unsafe ones');
console.log(pintle('check', ...unsafe, '--as-of', asOf).stdout.trimEnd());

const pair = pairOf();
if (pair === undefined) wrong.push('no timing was worked out for any sound site');
else {
  heading(`The timing of ${pair.site}, worked out from its own lines`);
  for (const block of pair.blocks) console.log(block + '\n');
}

/** The timing of the sound site whose leaves need the greatest lag between them; of any site, where none needs one. */
function pairOf() {
  const timing = /^(motion\.|leaf\.\S+\.run-time)/;
  const sites = sound.flatMap((site) => {
    try {
      const { figures } = JSON.parse(pintle('figures', site, '--output', 'json').stdout);
      return [
        {
          site,
          lag: figures.find((figure) => figure.id === 'motion.least-lag')?.value ?? -1,
          timed: figures.some((figure) => timing.test(figure.id)),
        },
      ];
    } catch {
      return [];
    }
  });
  const [chosen] = sites.filter(({ timed }) => timed).sort((a, b) => b.lag - a.lag);
  if (chosen === undefined) return undefined;
  const blocks = pintle('figures', chosen.site).stdout.trimEnd().split('\n\n').slice(1);
  return { site: chosen.site, blocks: blocks.filter((block) => timing.test(block)) };
}

heading('Before anybody relies on this');
console.log(`A figure is not a test. Measure the closing forces on the gate itself, with a calibrated instrument.
Local rules and licensed practice prevail over anything that is said here.
Isolate the mains, and make sure that it stays off, before you open a panel or reach into a gate.
All sites, panels and drives in the examples are invented.`);

heading('Going on');
console.log(`In VS Code:       npm run package, then “Extensions: Install from VSIX…” and dist/pintle.vsix; open a .gate file
                  from examples/, and change a number.
On the command line:  npm run --silent pintle -- check examples
                  npm run --silent pintle -- help`);

if (wrong.length > 0) {
  console.log(`\nThe examples do not say what they should:\n${wrong.map((line) => `  ${line}`).join('\n')}`);
  process.exitCode = 1;
} else console.log(`\nAll ${sound.length} sound sites are without errors, and all ${unsafe.length} unsafe ones were caught.`);

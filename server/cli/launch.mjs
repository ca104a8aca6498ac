// `npm run pintle`: runs the built command in this process, from the folder in which npm was called.
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const command = fileURLToPath(new URL('../../dist/pintle.cjs', import.meta.url));

function ready() {
  if (existsSync(command)) return true;
  return import('../../tests/workshop/prepare.mjs').then(({ prepare }) => {
    try {
      prepare((line) => process.stderr.write(line + '\n'));
      return true;
    } catch (error) {
      process.stderr.write(error.message + '\n');
      process.exitCode = 2;
      return false;
    }
  });
}

// npm changes to the folder of package.json before it runs a script; paths are meant from where the user stands.
const { npm_lifecycle_event: script, INIT_CWD: from } = process.env;
if (script === 'pintle' && from !== undefined) {
  try {
    process.chdir(from);
  } catch {
    // The folder is gone; paths are then taken from here.
  }
}

if (await ready()) createRequire(import.meta.url)(command);

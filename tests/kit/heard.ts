// A panel that hears every sensor of a text: what nobody hears counts for nothing.
import { installationOf } from './pages.ts';

const roles = { 'two-wire': 'two-wire-input', relay: 'safety-input normally-closed', resistive: 'edge-input' } as const;

/** The text with a panel behind it that hears all of its sensors whose models say how they report. */
export function heard(text: string): string {
  const terminals: string[] = ['reaction 0.1 s', 'terminal K0 common'];
  const wires: string[] = [];
  installationOf(text).sensors.forEach(({ name, model }, i) => {
    const output = model?.facts.output?.value;
    if (output === undefined || name === '') return;
    terminals.push(`terminal K${i + 1} ${roles[output]} common K0`);
    wires.push(`wire ${name} to K${i + 1} K0`);
  });
  const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
  return `${text}${text.endsWith('\n') ? '' : '\n'}${block('panel-model hearing-panel', terminals)}${block('panel hearing : hearing-panel', wires)}`;
}

// SARIF 2.1.0 (OASIS Standard, 27 March 2020).
import { allRules, ruleNamed } from '../../engine/inside.ts';
import { fingerprintsOf } from '../fingerprint.ts';
import { messageOf, type Report, type ReportedPlace } from '../report.ts';
import type { Output } from './output.ts';

export const output: Output = {
  name: 'sarif',
  summary: 'SARIF 2.1.0, for tools that gather findings',
  reader: 'program',
  write: written,
};

function written(report: Report): string {
  const named = new Set(report.files.flatMap((file) => file.findings.map((finding) => finding.rule)));
  const names = allRules.map((rule) => rule.name).filter((name) => named.has(name));
  for (const name of [...named].sort()) if (!names.includes(name)) names.push(name);
  const results = report.files.flatMap((file) => {
    const fingerprints = fingerprintsOf(file);
    return file.findings.map((finding, index) => ({
      ruleId: finding.rule,
      ruleIndex: names.indexOf(finding.rule),
      level: finding.severity,
      message: { text: messageOf(finding) },
      locations: [{ physicalLocation: location(file.path, finding.range) }],
      ...(finding.related.length === 0 ? {} : { relatedLocations: finding.related.map((related, id) => relatedLocation(related, id)) }),
      partialFingerprints: { 'pintle/v1': fingerprints[index] as string },
      properties: { source: finding.source },
    }));
  });
  const log = {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'pintle', version: report.version, semanticVersion: report.version, rules: names.map(descriptor) } },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: report.unreadable.length === 0,
            toolExecutionNotifications: report.unreadable.map(({ path, why }) => ({
              level: 'error',
              message: { text: `${path}: ${why}` },
              locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(path) } } }],
            })),
          },
        ],
        artifacts: report.files.map(({ path }) => ({ location: { uri: uriOf(path) }, sourceLanguage: 'pintle', encoding: 'UTF-8' })),
        results,
      },
    ],
  };
  return JSON.stringify(log, null, 2) + '\n';
}

function descriptor(name: string) {
  const rule = ruleNamed(name);
  if (rule === undefined) return { id: name };
  return {
    id: name,
    shortDescription: { text: rule.title },
    fullDescription: { text: rule.why },
    help: { text: `${rule.remedy} Source: ${rule.source.text}` },
    defaultConfiguration: { level: rule.severity },
  };
}

function location(path: string, { start, end }: ReportedPlace['range']) {
  return {
    artifactLocation: { uri: uriOf(path) },
    region: { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column },
  };
}

const relatedLocation = ({ message, path, range }: ReportedPlace, id: number) => ({
  id,
  message: { text: message },
  physicalLocation: location(path, range),
});

/** A path as a URI reference: relative ones stay relative. */
export function uriOf(path: string): string {
  const encoded = path
    .replace(/\p{Cs}/gu, '\ufffd')
    .split('/')
    .map(encodeURIComponent)
    .join('/');
  if (/^[A-Za-z]%3A\//.test(encoded)) return 'file:///' + encoded.replace('%3A', ':');
  return encoded.startsWith('/') ? 'file://' + encoded : encoded;
}

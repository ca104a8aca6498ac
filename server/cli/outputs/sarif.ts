// SARIF 2.1.0 (OASIS Standard, 27 March 2020).
import { ruleNamed } from '../../engine/inside.ts';
import { fingerprints } from '../fingerprint.ts';
import { JsonText } from '../json-text.ts';
import { messageOf, type ReportedFinding, type ReportedPlace, type Unread } from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'sarif',
  summary: 'SARIF 2.1.0, for tools that gather findings',
  reader: 'program',
  begin,
};

/** What paths are seen from. Each machine has it somewhere else, and so the log does not say where: a reader puts in its own. */
const rootId = '%SRCROOT%';

function begin({ send, version }: Beginning): Writer {
  const json = new JsonText(send);
  const rules = new Map<string, number>();
  const artifacts: string[] = [];
  const unread: Unread[] = [];
  json.begin('{');
  json.value('https://json.schemastore.org/sarif-2.1.0.json', '$schema');
  json.value('2.1.0', 'version');
  json.begin('[', 'runs');
  json.begin('{');
  json.value('utf16CodeUnits', 'columnKind');
  json.value({ [rootId]: { description: { text: 'The root of the files that were checked.' } } }, 'originalUriBaseIds');
  json.begin('[', 'results');
  return {
    file: (file) => {
      artifacts.push(file.path);
      const fingerprint = fingerprints(file.path);
      for (const finding of file.findings()) json.value(resultOf(finding, file.path, fingerprint(finding), rules));
    },
    unread: (one) => void unread.push(one),
    end: () => {
      json.end();
      json.begin('[', 'artifacts');
      for (const path of artifacts) json.value({ location: locationOf(path), sourceLanguage: 'pintle', encoding: 'UTF-8' });
      json.end();
      json.value([{ executionSuccessful: unread.length === 0, toolExecutionNotifications: unread.map(notificationOf) }], 'invocations');
      json.value({ driver: { name: 'pintle', version, semanticVersion: version, rules: [...rules.keys()].map(descriptor) } }, 'tool');
      json.end();
      json.end();
      json.end();
    },
  };
}

/** Rules get their numbers as they come. */
function resultOf(finding: ReportedFinding, path: string, fingerprint: string, rules: Map<string, number>) {
  const ruleIndex = rules.get(finding.rule) ?? rules.size;
  rules.set(finding.rule, ruleIndex);
  return {
    ruleId: finding.rule,
    ruleIndex,
    level: finding.severity,
    message: { text: messageOf(finding) },
    locations: [{ physicalLocation: location(path, finding.range) }],
    ...(finding.related.length === 0 ? {} : { relatedLocations: finding.related.map((related, id) => relatedLocation(related, id)) }),
    partialFingerprints: { 'pintle/v1': fingerprint },
    properties: { source: finding.source },
  };
}

const notificationOf = ({ path, why }: Unread) => ({
  level: 'error',
  message: { text: `${path}: ${why}` },
  locations: [{ physicalLocation: { artifactLocation: locationOf(path) } }],
});

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
    artifactLocation: locationOf(path),
    region: { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column },
  };
}

const relatedLocation = ({ message, path, range }: ReportedPlace, id: number) => ({
  id,
  message: { text: message },
  physicalLocation: location(path, range),
});

const locationOf = (path: string) => ({ uri: uriOf(path), uriBaseId: rootId });

/** A path seen from the root as a URI reference. */
export const uriOf = (path: string): string =>
  path
    .replace(/\p{Cs}/gu, '\ufffd')
    .split('/')
    .map(encodeURIComponent)
    .join('/');

// The installation as a tree of things, for a view beside the text: what moves, what drives and guards it, what is wired.
import { firstIndex, type Span } from '../../grammar/index.ts';
import { type Analysis, accountShown } from '../engine/index.ts';
import { type Device, headPlace, type Panel, type Sensor } from '../model/index.ts';
import { graveness, type Severity, tellerOfHazards, verdictOf } from '../rules/index.ts';
import type { JudgedHazard } from '../safeguards/index.ts';
import { modelKinds, type SiteWord } from '../vocabulary/index.ts';

export type OverviewKind = Exclude<SiteWord, 'measured'> | 'hazard' | 'group' | 'judgement' | 'terminal' | 'model';

export interface OverviewNode extends Span {
  /** Stays the same while the thing does, so that a view keeps what is open. */
  readonly id: string;
  readonly kind: OverviewKind;
  readonly label: string;
  /** A few words beside it. */
  readonly detail: string;
  /** The gravest finding in its block; none where nothing is found. */
  readonly severity: Severity | undefined;
  readonly children: readonly OverviewNode[];
}

interface Block {
  readonly name: string;
  readonly title: string | undefined;
  readonly at: Span;
}

/** The things of a site in the order in which a practitioner asks for them; of a library, its models. */
export function overview(analysis: Analysis): OverviewNode[] {
  const { installation } = analysis;
  const gravest = gravestIn(analysis);
  const toldOf = tellerOfHazards(installation, [...analysis.findings, ...analysis.accepted]);
  const node = (
    kind: OverviewKind,
    id: string,
    label: string,
    detail: string,
    place: Span,
    whole: Span | undefined,
    children: readonly OverviewNode[] = [],
  ): OverviewNode => ({
    kind,
    id,
    label,
    detail,
    start: place.start,
    end: place.end,
    severity: whole === undefined ? undefined : gravest(whole),
    children,
  });
  const block = (
    kind: OverviewKind,
    it: Block & Parameters<typeof headPlace>[0],
    detail: string,
    children: readonly OverviewNode[] = [],
  ): OverviewNode =>
    node(
      kind,
      `${kind}.${it.name}`,
      it.name,
      [it.title ?? '', detail].filter((part) => part !== '').join(', '),
      headPlace(it),
      it.at,
      children,
    );

  const sensorNode = (sensor: Sensor): OverviewNode =>
    block(
      'sensor',
      sensor,
      [
        sensor.model?.facts.kind?.value ?? sensor.modelAt?.text ?? '',
        sensor.facts.watches === undefined ? '' : `watches ${sensor.facts.watches.movements.join(', ')}`,
      ]
        .filter((part) => part !== '')
        .join(', '),
    );
  const leaves = installation.leaves.map((leaf) => {
    const shown = toldOf(leaf).map((judged, index) => ({
      ...node(
        'hazard',
        `hazard.${leaf.name}.${judged.hazard.kind}.${index}`,
        judged.hazard.kind.replaceAll('-', ' '),
        hazardDetail(judged),
        headPlace(leaf),
        undefined,
      ),
      ...(judged.covered ? {} : { severity: 'error' as const }),
    }));
    return block('leaf', leaf, '', [
      ...leaf.drives.map((drive) => block('drive', drive, drive.modelAt?.text ?? '')),
      ...leaf.sensors.map(sensorNode),
      ...shown,
    ]);
  });
  const nodes: OverviewNode[] = [];
  const { site, motion } = installation;
  const account = accountShown(analysis);
  if (account.of > 0)
    nodes.push(
      node(
        'group',
        'account',
        `${account.draft ? 'DRAFT, judged' : 'Judged'} ${account.judged} of ${account.of}`,
        '',
        site === undefined ? { start: 0, end: 0 } : headPlace(site),
        undefined,
        account.open.map((open, index) => ({
          ...node('judgement', `account.${index}`, open.what, `not judged, lacks ${open.lacks.join(', ')}`, open, undefined),
          severity: 'warning' as const,
        })),
      ),
    );
  if (site !== undefined) nodes.push(node('site', 'site', site.title ?? 'site', '', headPlace(site), site.at));
  nodes.push(...leaves);
  const loose = installation.drives.filter((drive) => drive.leaf === undefined).map((drive) => block('drive', drive, 'moves no leaf'));
  nodes.push(...loose, ...installation.sensors.filter((sensor) => sensor.leaf === undefined).map(sensorNode));
  nodes.push(...installation.controls.map((control) => block('control', control, control.facts.acts?.value ?? '')));
  nodes.push(
    ...installation.panels.map((panel) =>
      block(
        'panel',
        panel,
        panel.modelAt?.text ?? '',
        wiresOf(panel).map(([terminal, label, detail, place]) =>
          node('terminal', `terminal.${panel.name}.${terminal}`, label, detail, place, undefined),
        ),
      ),
    ),
  );
  nodes.push(
    ...installation.cables.map((cable) =>
      block(
        'cable',
        cable,
        [cable.modelAt?.text ?? '', cable.load === undefined ? '' : `to ${nameOf(cable.load)}`].filter((part) => part !== '').join(', '),
      ),
    ),
  );
  nodes.push(...installation.functions.map((it) => block('function', it, '')));
  if (motion !== undefined) nodes.push(node('motion', 'motion', 'motion', '', headPlace(motion), motion.at));
  nodes.push(...modelsOf(analysis, node));
  return nodes;
}

/** What covers a hazard, by name; “not enough” where what is there does not do. */
function hazardDetail(judged: JudgedHazard): string {
  const names = [...new Set(judged.by.flatMap(({ name, says }) => (name === '' ? [says] : [name])))].join(', ');
  return judged.covered ? `covered by ${names}` : verdictOf(judged);
}

const nameOf = (load: Device | { readonly kind: 'panel'; readonly it: Panel }): string => load.it.name;

/** Each wire by its first terminal. */
const wiresOf = (panel: Panel): [terminal: string, label: string, detail: string, place: Span][] =>
  panel.wires.map(({ ends, device, part, fact }) => {
    const names = ends.map((end) => end.at.text);
    return [
      `${names.join('-')}.${fact.line.start}`,
      names.join(' '),
      `${device?.it.name ?? fact.line.values[0]?.kind ?? ''}${part === 'signal' ? '' : `, ${part}`}`,
      { start: fact.line.start, end: fact.line.end },
    ];
  });

function modelsOf(
  analysis: Analysis,
  node: (kind: OverviewKind, id: string, label: string, detail: string, place: Span, whole: Span) => OverviewNode,
): OverviewNode[] {
  const { entities } = analysis.installation.reading;
  return modelKinds.flatMap((word) =>
    entities[word].map((model) =>
      node('model', `${word}.${model.name}`, model.name, model.title ?? word.replace('-', ' '), headPlace(model), model.at),
    ),
  );
}

/** A function that gives the gravest finding that begins in a stretch of the text. Findings are in the order of the text. */
function gravestIn({ findings }: Analysis): (place: Span) => Severity | undefined {
  return ({ start, end }) => {
    let gravest: Severity | undefined;
    for (let i = firstIndex(findings, (finding) => finding.start >= start); i < findings.length; i++) {
      const finding = findings[i] as Analysis['findings'][number];
      if (finding.start > end) break;
      if (gravest === undefined || graveness[finding.severity] > graveness[gravest]) gravest = finding.severity;
    }
    return gravest;
  };
}

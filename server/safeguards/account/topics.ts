// What is judged of an installation, topic by topic, and the facts that are lacking where it is not.
import {
  declaredAs,
  guards,
  heedingOf,
  isEdge,
  type Measure,
  type Movement,
  measureOf,
  missesPeople,
  sensorsFor,
  watches,
} from '../../circuits/index.ts';
import { forceRecordsOf } from '../../figures/force-records/working.ts';
import { hazardsOf } from '../../figures/hazards/working.ts';
import { releasedOf } from '../../figures/leaf-load/working.ts';
import { closingStopOf, letGoReactionOf, stoppingPanelsOf } from '../../figures/overtravel/working.ts';
import { isSlowSpeedStated } from '../../figures/run-time/working.ts';
import { headPlace, type Installation, type Leaf, type Panel, regimeOf, type Sensor } from '../../model/index.ts';
import { quoted } from '../../vocabulary/index.ts';
import { commandsOf, heldInView, isFixed, judgedHeldControlOf } from '../commands.ts';
import { forcesProven } from '../forces.ts';
import { measuresFor, needsForceTest } from '../guarding.ts';
import { positionsOf, unsetSelectorsOf } from '../positions.ts';
import { lowVoltageCables, mains, supplies } from './circuits.ts';
import { type Grade, type Lack, none, type Stretch, type Tell } from './entries.ts';
import { isLost, lackOf, lackOfModel } from './lacks.ts';

/** How grave the gaps are: `grave` where the public is near or the gate closes by itself. */
export interface Situation {
  readonly grave: boolean;
}
export type Topic = (installation: Installation, tell: Tell, situation: Situation) => void;

const graveOr = ({ grave }: Situation, other: Grade): Grade => (grave ? 'error' : other);

/** Who is there, and by which rules it is judged. */
const site: Topic = ({ site, drives }, tell) => {
  if (site === undefined || drives.length === 0) return;
  const lacks: Lack[] = [];
  const ask = (word: 'rules' | 'users', question: string): void => {
    if (site.facts[word] === undefined && !isLost(site.unread, 'site', word)) lacks.push(lackOf('site', word, site, question));
  };
  ask('rules', 'Which body of rules holds there?');
  ask('users', 'Who can be near the gate while it moves?');
  tell('site', '', headPlace(site), lacks.length === 0 ? none : lacks, 'error');
};

/** What North America asks of a site and of its controls. */
const northAmerica: Topic = ({ site, controls }, tell) => {
  if (site === undefined || site.facts.rules?.value !== 'north-america') return;
  const lacks: Lack[] = [];
  const ask = (word: 'usage-class' | 'pedestrian-entrance' | 'signs', question: string): void => {
    if (site.facts[word] === undefined && !isLost(site.unread, 'site', word)) lacks.push(lackOf('site', word, site, question));
  };
  ask('usage-class', 'What does the gate serve?');
  ask('pedestrian-entrance', 'Where do people on foot pass?');
  ask('signs', 'On which sides do signs warn of the gate?');
  for (const control of controls)
    if (isFixed(control) && control.facts.reach === undefined && !isLost(control.unread, 'control', 'reach'))
      lacks.push(lackOf('control', 'reach', control, `How far is ${quoted(control.name)} from the moving gate?`));
  tell('entrapment', '', headPlace(site), lacks.length === 0 ? none : lacks, 'warning');
};

const sees: ReadonlySet<Measure | undefined> = new Set<Measure>(['D', 'E']);

/** The closing edge of each leaf: whether what is there sees whom it is there for. */
const closingEdges: Topic = (installation, tell, situation) => {
  const held = heldInView(installation);
  for (const leaf of installation.leaves) {
    if (leaf.drives.length === 0) continue;
    const lacks: Lack[] = [];
    if (!held)
      for (const sensor of sensorsFor(leaf))
        if (guards(sensor, leaf, 'closing')) lookedAt(sensor, leaf, 'closing', lacks);
        else if (guards(sensor, leaf, 'pedestrian')) lookedAt(sensor, leaf, 'pedestrian', lacks);
    tell('closing-edge', leaf.name, headPlace(leaf), lacks.length === 0 ? none : lacks, graveOr(situation, 'warning'));
  }
};

/** What sees people, and the panel heeds it. */
const isRelied = (sensor: Sensor): boolean => !isEdge(sensor) && sees.has(measureOf(sensor)) && heedingOf(sensor) !== undefined;

/** What lacks before it is known whom a sensor sees. */
function lookedAt(sensor: Sensor, leaf: Leaf, movement: Movement, lacks: Lack[]): void {
  const { model } = sensor;
  if (model?.facts.measure !== undefined && model.facts.kind === undefined && !isLost(model.unread, 'sensor-model', 'kind'))
    lacks.push(lackOfModel(sensor.installation, 'sensor-model', 'kind', model, `What kind of device is ${quoted(model.name)}?`));
  if (!isRelied(sensor) || sensor.facts.height !== undefined || isLost(sensor.unread, 'sensor', 'height')) return;
  if (sensorsFor(leaf).some((other) => other !== sensor && guards(other, leaf, movement) && seesAsMuch(other, sensor))) return;
  lacks.push(lackOf('sensor', 'height', sensor, `How high above the ground is the lowest ray of ${quoted(sensor.name)}?`));
}

/** Beside one that is low enough for certain, and tested, it does not matter how high another is that is no better. */
const seesAsMuch = (other: Sensor, sensor: Sensor): boolean =>
  isRelied(other) &&
  other.facts.height !== undefined &&
  !missesPeople(other) &&
  heedingOf(other)?.tested === true &&
  (measureOf(sensor) === 'D' || measureOf(other) === 'E');

/** What each device that sees people sees: how low, which is asked at the closing edge where it guards that, and how far. */
const sight: Topic = (installation, tell) => {
  for (const sensor of installation.sensors) {
    const { model, facts } = sensor;
    if (model === undefined || facts.on !== undefined || !isRelied(sensor)) continue;
    const lacks: Lack[] = [];
    if (!watches(sensor, 'closing')) for (const leaf of installation.leaves) lookedAt(sensor, leaf, 'opening', lacks);
    if (model.facts.reach === undefined && !isLost(model.unread, 'sensor-model', 'reach'))
      lacks.push(lackOfModel(installation, 'sensor-model', 'reach', model, `How far does ${quoted(model.name)} reach?`));
    tell('sight', sensor.name, headPlace(sensor), lacks.length === 0 ? none : lacks, 'note');
  }
};

/** Whether each panel is made for the supply of the site. */
const feeds: Topic = ({ site, panels }, tell) => {
  for (const panel of panels) {
    const { model } = panel;
    if (model === undefined || site === undefined) continue;
    const lacks: Lack[] = [];
    if (site.facts.supply === undefined && !isLost(site.unread, 'site', 'supply'))
      lacks.push(lackOf('site', 'supply', site, 'What feeds the installation?'));
    if (model.facts.supply === undefined && !isLost(model.unread, 'panel-model', 'supply'))
      lacks.push(lackOfModel(panel.installation, 'panel-model', 'supply', model, `For which supply is ${quoted(model.name)} made?`));
    tell('feed', panel.name, headPlace(panel), lacks.length === 0 ? none : lacks, 'note');
  }
};

/** The places of a leaf other than its closing edge, by what hazards.ts says of what is not stated. */
const placesOfSwing = [
  ['opening-side', 'the room behind it when open'],
  ['hinge', 'the gap at the hinge'],
  ['underside', 'the gap above the ground'],
] as const;
const placesOfSlide = [
  ['opening-side', 'the room behind it when open'],
  ['passing', 'what it runs past'],
] as const;

const questions: Readonly<Record<string, (name: string) => string>> = {
  'room-when-open': (name) => `How much room is left behind ${quoted(name)} when it is open?`,
  'hinge-gap': (name) => `How wide is the gap at the hinge of ${quoted(name)}, and how far does it change?`,
  'hinge-offset': (name) => `Where does the hinge axis of ${quoted(name)} lie?`,
  thickness: (name) => `How thick is ${quoted(name)}?`,
  'ground-gap': (name) => `How far above the ground is ${quoted(name)}?`,
  passes: (name) => `What does ${quoted(name)} run past, and how near?`,
  friction: (name) => `With what pull does ${quoted(name)} just move by hand once its drive is released?`,
  tail: (name) => `How long is the tail of ${quoted(name)}?`,
  'roller-spacing': (name) => `How far apart are the rollers of ${quoted(name)}?`,
  'infill-opening': (name) => `How large are the openings in ${quoted(name)}?`,
};

/** The other places of each leaf at which it can hurt somebody. */
const places: Topic = (installation, tell) => {
  const held = heldInView(installation);
  for (const leaf of installation.leaves) {
    const hazards = hazardsOf(leaf);
    if (hazards === undefined) continue;
    for (const [subject, about] of leaf.facts.slides === undefined ? placesOfSwing : placesOfSlide) {
      const unstated = held ? undefined : hazards.unstated.find((one) => one.about === about);
      const lacks = unstated === undefined ? [] : [...lacksInLeaf(leaf, unstated.facts)];
      if (subject === 'opening-side' && !held)
        for (const sensor of sensorsFor(leaf))
          if (guards(sensor, leaf, 'opening') && !guards(sensor, leaf, 'closing')) lookedAt(sensor, leaf, 'opening', lacks);
      tell(subject, leaf.name, headPlace(leaf), lacks.length === 0 ? none : lacks, 'warning');
    }
  }
};

function lacksInLeaf(leaf: Leaf, facts: readonly string[]): readonly Lack[] {
  const missing = facts.filter((word) => !isLost(leaf.unread, 'leaf', word));
  // The gap at the hinge as measured needs nothing beside it; from where the hinge is it follows only with all the rest.
  const asked = missing.includes('hinge-gap') ? ['hinge-gap'] : missing;
  return asked.length === 0 ? none : asked.map((word) => lackInLeaf(leaf, word));
}

function lackInLeaf(leaf: Leaf, word: string): Lack {
  const question = questions[word];
  return {
    word,
    block: 'leaf',
    of: leaf.name,
    at: headPlace(leaf),
    path: undefined,
    question: question === undefined ? `What is the ${word} of ${quoted(leaf.name)}?` : question(leaf.name),
  };
}

/** How surely each panel that people rely on stops the gate. */
const levels: Topic = (installation, tell) => {
  if (installation.site?.facts.rules?.value !== 'europe') return;
  const panels = new Set<Panel>();
  for (const sensor of installation.sensors) {
    const panel = measureOf(sensor) === undefined ? undefined : heedingOf(sensor)?.wire.panel;
    if (panel?.model === undefined || panels.has(panel)) continue;
    panels.add(panel);
    const { model } = panel;
    const isStated = declaredAs(model.facts) !== 'unstated' || isLost(model.unread, 'panel-model', 'performance-level');
    tell(
      'level',
      panel.name,
      panel.modelAt ?? headPlace(panel),
      isStated
        ? none
        : [
            lackOfModel(
              installation,
              'panel-model',
              'performance-level',
              model,
              `Which performance level, or which category, does the maker declare for ${quoted(model.name)}?`,
            ),
          ],
      'note',
    );
  }
};

/** How the gate is commanded: by each control, and by the positions of the panels. */
const commanding: Topic = (installation, tell, situation) => {
  for (const control of installation.controls) {
    const { by, acts } = control.facts;
    if (acts === undefined || acts.value === 'stop') continue;
    const lacks = by === undefined && !isLost(control.unread, 'control', 'by');
    tell(
      'control',
      control.name,
      headPlace(control),
      lacks ? [lackOf('control', 'by', control, `By what is ${quoted(control.name)} given?`)] : none,
      'warning',
    );
  }
  // What moves by itself already can be made no worse by a position.
  const grade = commandsOf(installation).some(({ kind }) => kind === 'automatic') ? 'note' : graveOr(situation, 'warning');
  for (const { panel, selection, option } of positionsOf(installation)) {
    const { model } = panel;
    const { selector } = selection;
    if (model === undefined || selector === undefined) continue;
    const at = headPlace(selector);
    const path = model.path === installation.path ? undefined : model.path;
    tell(
      'selector',
      selector.name,
      selection.fact.line,
      option.acts !== undefined
        ? none
        : [
            {
              word: 'acts',
              block: 'panel-model',
              of: model.name,
              at,
              path,
              question: `How is the gate commanded while ${quoted(selector.name)} of ${quoted(model.name)} is at ${quoted(option.name.text)}?`,
            },
          ],
      grade,
    );
  }
  for (const panel of installation.panels)
    for (const selector of unsetSelectorsOf(panel)) {
      // Where no position commands otherwise than another, it does not matter which it is in.
      if (selector.facts.option.every(({ acts }) => acts === 'any') || isLost(panel.unread, 'panel', 'select')) continue;
      const question = `In which position is ${quoted(selector.name)} of ${quoted(panel.name)}?`;
      tell('selector', selector.name, headPlace(panel), [lackOf('panel', 'select', panel, question)], grade);
    }
};

/** Whether the forces of a leaf that touches people are known. */
const forces: Topic = (installation, tell, situation) => {
  for (const leaf of installation.leaves) {
    if (!needsForceTest(leaf)) continue;
    const isMeasured = leaf.forces.length > 0 && forceRecordsOf(leaf) !== undefined;
    tell(
      'forces',
      leaf.name,
      headPlace(leaf),
      isMeasured
        ? none
        : [{ word: 'force', block: 'measured', of: leaf.name, at: headPlace(leaf), path: undefined, question: askForForces(leaf) }],
      graveOr(situation, 'warning'),
    );
  }
};

const askForForces = (leaf: Leaf): string => `With what force does ${quoted(leaf.name)} strike, measured at every point of the plan?`;

/** How far a leaf runs on after what guards it has told the drive to stop. */
const runOn: Topic = (installation, tell, situation) => {
  if (!regimeOf(installation).limitsForces) return;
  for (const leaf of installation.leaves) {
    // Where the drives limit their own force, what was measured shows how hard the leaf strikes, however it stops.
    if (leaf.drives.length === 0 || measuresFor(leaf, 'closing', false).E || forcesProven(leaf)) continue;
    const lacks = lacksForStop(leaf);
    // What else is missing, as a panel, is told by rules of its own.
    if (lacks.length === 0 && closingStopOf(leaf) === undefined) continue;
    tell('run-on', leaf.name, placeOfLack(leaf, 'stops-in'), lacks, graveOr(situation, 'warning'));
  }
};

/** How near the closed position a leaf that is held runs on depends on how slow it is there. */
const slowZones: Topic = (installation, tell, situation) => {
  if (judgedHeldControlOf(installation) === undefined || (installation.motion?.facts['slow-zone']?.last ?? 0) === 0) return;
  for (const leaf of installation.leaves) {
    const lacks: Lack[] = [];
    if (!isSlowSpeedStated(leaf))
      for (const { model } of leaf.drives)
        if (model !== undefined && model.facts['slow-speed'] === undefined && !isLost(model.unread, 'drive-model', 'slow-speed'))
          lacks.push(
            lackOfModel(
              installation,
              'drive-model',
              'slow-speed',
              model,
              `How slow is ${quoted(model.name)} in its slow zone, as a share of its speed?`,
            ),
          );
    if (leaf.drives.length === 0) continue;
    tell('slow-zone', leaf.name, placeOfLack(leaf, 'slow-speed'), lacks.length === 0 ? none : lacks, graveOr(situation, 'warning'));
  }
};

/** The drive whose model does not state it, or the leaf. */
function placeOfLack(leaf: Leaf, word: 'stops-in' | 'slow-speed'): Stretch {
  const drive = leaf.drives.find(({ model }) => model !== undefined && model.facts[word] === undefined);
  return drive === undefined ? headPlace(leaf) : (drive.modelAt ?? headPlace(drive));
}

function lacksForStop(leaf: Leaf): readonly Lack[] {
  const { installation } = leaf;
  const lacks: Lack[] = [];
  if (judgedHeldControlOf(installation) !== undefined && letGoReactionOf(leaf) === undefined)
    for (const { model } of stoppingPanelsOf(leaf))
      if (model !== undefined && model.facts.reaction === undefined && !isLost(model.unread, 'panel-model', 'reaction'))
        lacks.push(
          lackOfModel(
            installation,
            'panel-model',
            'reaction',
            model,
            `How soon does ${quoted(model.name)} tell the drives to stop when a control is let go?`,
          ),
        );
  for (const { model } of leaf.drives)
    if (model !== undefined && model.facts['stops-in'] === undefined && !isLost(model.unread, 'drive-model', 'stops-in'))
      lacks.push(
        lackOfModel(
          installation,
          'drive-model',
          'stops-in',
          model,
          `How soon does ${quoted(model.name)} stand still when it is told to stop?`,
        ),
      );
  for (const sensor of leaf.sensors) {
    const { model } = sensor;
    if (model === undefined || !isEdge(sensor) || !guards(sensor, leaf, 'closing')) continue;
    for (const [word, asks] of edgeFacts)
      if (model.facts[word] === undefined && !isLost(model.unread, 'sensor-model', word))
        lacks.push(lackOfModel(installation, 'sensor-model', word, model, asks(model.name)));
  }
  return lacks.length === 0 ? none : lacks;
}

const edgeFacts: readonly (readonly ['reaction' | 'deformation', (name: string) => string])[] = [
  ['reaction', (name) => `How soon does ${quoted(name)} tell the drive to stop?`],
  ['deformation', (name) => `How far does ${quoted(name)} still give after it has tripped?`],
];

/** What gravity does to a leaf whose drive is released. What nobody has measured may hold it, or may not. */
const releases: Topic = ({ leaves }, tell) => {
  for (const leaf of leaves) {
    const released = leaf.drives.length === 0 ? undefined : releasedOf(leaf);
    if (released === undefined) continue;
    const { friction, frictionStated, towardsClosed, towardsOpen } = released;
    const holds = frictionStated || Math.max(towardsClosed, towardsOpen) <= friction || isLost(leaf.unread, 'leaf', 'friction');
    tell('release', leaf.name, headPlace(leaf), holds ? none : [lackInLeaf(leaf, 'friction')], 'warning');
  }
};

/** A leaf without a track: whether its rollers hold it is known where both the tail and their distance are. */
const balances: Topic = ({ leaves }, tell) => {
  for (const leaf of leaves) {
    const { slides, tail, 'roller-spacing': spacing } = leaf.facts;
    if (slides === undefined || (tail === undefined && spacing === undefined)) continue;
    const lacks = (['tail', 'roller-spacing'] as const).filter(
      (word) => leaf.facts[word] === undefined && !isLost(leaf.unread, 'leaf', word),
    );
    tell('balance', leaf.name, headPlace(leaf), lacks.length === 0 ? none : lacks.map((word) => lackInLeaf(leaf, word)), 'warning');
  }
};

/** All topics, in the order in which they are told. */
export const topics: readonly Topic[] = [
  site,
  northAmerica,
  closingEdges,
  sight,
  runOn,
  slowZones,
  places,
  releases,
  balances,
  commanding,
  levels,
  feeds,
  forces,
  mains,
  lowVoltageCables,
  supplies,
];

// What is judged of cables and of what feeds a device, and the facts that are lacking where it is not.
import { extraLow, isMains, motorWiringOf, upstreamOf } from '../../circuits/index.ts';
import { mostOf, ratingOf } from '../../figures/current-rating/working.ts';
import { protectedBy, protectiveAreaOf } from '../../figures/loop-impedance/working.ts';
import { type Cable, type Drive, headPlace, type Installation, type Panel, regimeOf, type Sensor } from '../../model/index.ts';
import { type Lack, none } from './entries.ts';
import { isLost, lackOf, lackOfModel } from './lacks.ts';
import type { Topic } from './topics.ts';

const orNone = (lacks: readonly Lack[]): readonly Lack[] => (lacks.length === 0 ? none : lacks);

/** Every mains circuit: what protects it, whether a fault is cut off in time, and whether it bears what is let through. */
export const mains: Topic = (installation, tell) => {
  for (const cable of installation.cables) {
    if (isMains(cable) !== true) continue;
    const lacks: Lack[] = [...ofProtection(cable), ...ofLaying(cable)];
    if (regimeOf(installation).judgesMainsByIec) lacks.push(...ofEarth(installation), ...ofLoop(cable));
    tell('mains', cable.name, headPlace(cable), orNone(lacks), 'warning');
  }
};

const stateIn = (cable: Cable, word: 'carries' | 'length' | 'method' | 'breaker', question: string): readonly Lack[] =>
  isLost(cable.unread, 'cable', word) ? none : [lackOf('cable', word, cable, question)];

/** What stands before a cable behind a panel is known only where the feed of that panel is stated. */
function ofProtection(cable: Cable): readonly Lack[] {
  const { load } = cable;
  if (cable.facts.breaker !== undefined || cable.facts.fuse !== undefined) return none;
  if (load === undefined || load.kind === 'panel' || upstreamOf(cable) !== undefined) return none;
  return stateIn(cable, 'breaker', `What protects “${cable.name}”, or the feed of the panel before it?`);
}

function ofLaying(cable: Cable): readonly Lack[] {
  if (ratingOf(cable) !== undefined || cable.facts.method !== undefined || cable.model === undefined) return none;
  return stateIn(cable, 'method', `How is “${cable.name}” laid?`);
}

function ofEarth({ site }: Installation): readonly Lack[] {
  if (site === undefined) return none;
  const earthing = site.facts.earthing?.value;
  const word = earthing === undefined ? 'earthing' : earthing === 'TN' ? 'external-impedance' : 'earth-electrode';
  if (site.facts[word] !== undefined || isLost(site.unread, 'site', word)) return none;
  return [lackOf('site', word, site, questionsOfEarth[word])];
}

const questionsOfEarth = {
  earthing: 'How is the supply earthed?',
  'external-impedance': 'What is the impedance of the earth fault loop outside, as measured?',
  'earth-electrode': 'What is the resistance of the earth electrode, as measured?',
} as const;

/** What the loop of a fault on TN needs of each cable that it runs through. */
function ofLoop(cable: Cable): readonly Lack[] {
  const { installation } = cable;
  const earthing = installation.site?.facts.earthing?.value;
  const lacks: Lack[] = [];
  for (const one of protectedBy(cable)) {
    const { model } = one;
    if (earthing === 'TN' && one.facts.length === undefined) lacks.push(...stateIn(one, 'length', `How long is “${one.name}”?`));
    // Fewer than three cores are another finding.
    if (model === undefined || protectiveAreaOf(one) !== undefined || (model.facts.cores !== undefined && model.facts.cores.value < 3))
      continue;
    const word = model.facts.cores === undefined ? 'cores' : 'protective-conductor';
    if (!isLost(model.unread, 'cable-model', word))
      lacks.push(lackOfModel(installation, 'cable-model', word, model, `What protective conductor does “${model.name}” have?`));
  }
  return lacks;
}

/** Every cable at extra-low voltage: whether it bears its current, and leaves enough voltage. */
export const lowVoltageCables: Topic = (installation, tell) => {
  for (const cable of installation.cables) {
    const low = isMains(cable);
    if (low === true) continue;
    const lacks: Lack[] = [];
    if (low === undefined) lacks.push(...stateIn(cable, 'carries', `What does “${cable.name}” carry, and at which voltage?`));
    if (cable.facts.length === undefined) lacks.push(...stateIn(cable, 'length', `How long is “${cable.name}”?`));
    // A signal cable heats itself by nothing worth knowing; what drives or protects is another thing.
    if (low === false && isLoaded(cable)) lacks.push(...ofLaying(cable));
    if (low === false) lacks.push(...ofNeed(cable));
    tell('cable', cable.name, headPlace(cable), orNone(lacks), 'note');
  }
};

/** True where it is not surely within what the conductor bears however it is laid: a quarter of the most that is thinkable. */
function isLoaded(cable: Cable): boolean {
  const most = mostOf(cable);
  const { carries, breaker, fuse } = cable.facts;
  return (
    most !== undefined && carries !== undefined && Math.max(carries.current, breaker?.rating ?? 0, fuse?.rating ?? 0) > most.current / 4
  );
}

function ofNeed({ load, facts: { carries }, installation }: Cable): readonly Lack[] {
  if (carries === undefined || carries.voltage > extraLow || (load?.kind !== 'sensor' && load?.kind !== 'drive')) return none;
  return leastVoltageOf(installation, load.it, load.kind === 'sensor' ? 'sensor-model' : 'drive-model');
}

function leastVoltageOf(installation: Installation, { model }: Sensor | Drive, block: 'sensor-model' | 'drive-model'): readonly Lack[] {
  if (model === undefined || model.facts['least-voltage'] !== undefined || isLost(model.unread, block, 'least-voltage')) return none;
  return [lackOfModel(installation, block, 'least-voltage', model, `What is the least voltage at which “${model.name}” works?`)];
}

/**
 * What feeds each drive: whether its wires end on one output, and whether the battery suits it. Of a device that says no voltage none is
 * asked for: leaflets of two products that are sold for each other seldom repeat it.
 */
export const supplies: Topic = (installation, tell) => {
  for (const drive of installation.drives) {
    const ends = motorWiringOf(drive)?.ends;
    if (ends === undefined || drive.model === undefined) continue;
    const unknown = ends.find(({ output, panel }) => output === undefined && (mayBeCrossed(panel) || isBatteryOpen(panel, drive)));
    tell('supply', drive.name, headPlace(drive), unknown === undefined ? none : outputLack(installation, unknown.panel), 'note');
  }
};

/** True where a panel has terminals for more than one motor. */
function mayBeCrossed({ model }: Panel): boolean {
  let motors = 0;
  for (const { role } of model?.terminals.values() ?? []) if (role === 'motor') motors++;
  return motors > 2;
}

/** True where nothing says which voltage the battery of a panel has to have for a drive. */
const isBatteryOpen = ({ battery, model }: Panel, drive: Drive): boolean =>
  battery !== undefined && model?.facts.battery === undefined && drive.model?.facts['least-voltage'] === undefined;

function outputLack(installation: Installation, { model }: Panel): readonly Lack[] {
  if (model === undefined || isLost(model.unread, 'panel-model', 'output')) return none;
  return [
    lackOfModel(installation, 'panel-model', 'output', model, `What does each output of “${model.name}” give, and at which terminals?`),
  ];
}

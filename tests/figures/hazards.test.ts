// The hazards of a leaf, each by hand: where it is, in which movements, how narrow and wide, whom it hurts, how far would be enough.
import { describe, expect, it } from 'vitest';
import { type Hazard, type HazardKind, type Hazards, hazardsOf } from '../../server/figures/hazards/working.ts';
import { judge } from '../kit/pages.ts';

/** A driven leaf with these lines, and the text of the file. */
function gate(lines: readonly string[], users?: string): { text: string; hazards: Hazards } {
  const slides = lines.some((line) => line.startsWith('slides'));
  const text = [
    'language 1',
    ...(users === undefined ? [] : [`site "Example" {\n  rules europe\n  users ${users}\n}`]),
    `drive-model push {\n  kind ${slides ? 'rack\n  speed 0.2 m/s' : 'direct\n  rotation 180 deg\n  shaft-speed 6 deg/s'}\n}`,
    `leaf west {\n  mass 150 kg\n${lines.map((line) => `  ${line}\n`).join('')}}`,
    'drive push-west : push {\n  moves west\n}\n',
  ].join('\n');
  const leaf = judge(text).installation.leaves[0];
  const hazards = leaf === undefined ? undefined : hazardsOf(leaf);
  if (hazards === undefined) throw new Error('no driven leaf');
  return { text, hazards };
}

/** The only hazard of that kind, and the line that it points to. */
function only(kind: HazardKind, lines: readonly string[], users?: string): Hazard & { readonly line: string | undefined } {
  const { text, hazards } = gate(lines, users);
  const found = hazards.found.filter((hazard) => hazard.kind === kind);
  expect(found.length).toBe(1);
  const [hazard] = found as [Hazard];
  return { ...hazard, line: hazard.at === undefined ? undefined : text.slice(hazard.at.start, hazard.at.end) };
}
const kinds = (lines: readonly string[], users?: string): HazardKind[] => gate(lines, users).hazards.found.map(({ kind }) => kind);
const unstated = (lines: readonly string[]): string[] =>
  gate(lines).hazards.unstated.map(({ facts, about }) => `${about}: ${facts.join(', ')}`);
const tenth = (metres: number): number => Math.round(metres * 1e4) / 10;

const swing = ['width 2 m', 'opens inward 90 deg'];
const slide = ['width 2 m', 'slides left 3 m'];

describe('the closing edge and the room behind the leaf', () => {
  it('travel with the edge: an arc of a swing leaf, the way of a sliding one', () => {
    expect(only('closing-edge', swing)).toMatchObject({
      where: 'closing edge and what it closes against',
      movements: ['closing'],
      least: 0,
      greatest: Math.PI,
      enough: undefined,
      standing: 'published',
      line: undefined,
    });
    expect(only('closing-edge', slide)).toMatchObject({
      least: 0,
      greatest: 3,
      parts: ['body', 'head', 'leg', 'foot', 'toes', 'arm', 'hand', 'finger'],
    });
  });
  it('less than 500 mm of room crush while it opens', () => {
    expect(only('opening-side', [...slide, 'room-when-open 300 mm'])).toMatchObject({
      where: 'open leaf and what stands behind it',
      movements: ['opening'],
      least: 0.3,
      greatest: 3.3,
      parts: ['body'],
      enough: 0.5,
      standing: 'published',
      line: 'room-when-open 300 mm',
    });
    expect(only('opening-side', [...slide, 'room-when-open 299 mm']).parts).toEqual(['body', 'head']);
    expect(kinds([...slide, 'room-when-open 500 mm'])).toEqual(['closing-edge']);
  });
});

describe('the gap at the hinge', () => {
  const measured = (line: string): Hazard => only('hinge', [...swing, line]);
  it('as measured: it hurts while it shrinks, and whoever fits in', () => {
    expect(only('hinge', [...swing, 'hinge-gap 60 mm least 30 mm greatest 60 mm'])).toMatchObject({
      where: 'leaf and its post, at the hinge',
      movements: ['closing', 'opening'],
      least: 0.03,
      greatest: 0.06,
      parts: ['leg', 'foot', 'toes', 'arm', 'hand'],
      enough: undefined,
      standing: 'published',
      line: 'hinge-gap 60 mm least 30 mm greatest 60 mm',
    });
    // A finger needs 25 mm, and from 20 mm on a hand fits in.
    expect(measured('hinge-gap 24 mm least 24 mm greatest 60 mm')).toMatchObject({
      movements: ['closing'],
      parts: ['leg', 'foot', 'toes', 'arm', 'hand', 'finger'],
    });
    expect(measured('hinge-gap 20 mm least 12 mm greatest 20 mm').parts).toEqual(['finger']);
  });
  it('a change of a whole millimetre is one, of less none', () => {
    expect(measured('hinge-gap 9 mm least 8 mm greatest 9 mm').parts).toEqual(['finger']);
    expect(measured('hinge-gap 24 mm least 23 mm greatest 24 mm').parts).toContain('hand');
    for (const line of ['hinge-gap 9 mm least 8.1 mm greatest 9 mm', 'hinge-gap 24 mm least 23.1 mm greatest 24 mm'])
      expect(kinds([...swing, line]), line).toEqual(['closing-edge']);
  });
  it('closed at every angle it is none', () =>
    expect(kinds([...swing, 'hinge-gap 8 mm least 0 mm greatest 8 mm'])).toEqual(['closing-edge']));
  it('from the shape, on the side where it is least', () => {
    const shape = (gap: string, offset: string): Hazard =>
      only('hinge', [...swing, 'thickness 40 mm', `hinge-gap ${gap}`, `hinge-offset ${offset}`]);
    // The axis stands 25 mm from the post and 20 mm inside the face of the leaf, which faces the post once it is open: 5 mm.
    const opensTo = shape('30 mm', '5 mm by -20 mm');
    expect(opensTo).toMatchObject({ where: 'leaf and its post, on the side that it opens to', movements: ['opening'] });
    expect(tenth(opensTo.least)).toBe(5);
    // The axis 10 mm beyond the end stands in the face of the post. On both sides the gap is least, 10 mm, when closed, and
    // only grows; the far corner of the post is then 20 mm and 70 mm from the leaf: √5300 mm.
    const closesFrom = shape('10 mm', '10 mm by 20 mm');
    expect(closesFrom).toMatchObject({ where: 'leaf and its post, on the side that it closes from', movements: ['closing'] });
    expect([closesFrom.least, closesFrom.greatest].map(tenth)).toEqual([10, 72.8]);
    // A leaf that would have to pass through its post leaves nothing, and no less than that. The far corner of the post is 5 mm
    // and 10 mm from the axis, and in line with it 5 mm of leaf end on the other side: √125 mm and 5 mm.
    const stuck = shape('10 mm', '5 mm by -30 mm');
    expect(stuck).toMatchObject({ least: 0, movements: ['closing', 'opening'], parts: ['finger'] });
    expect(tenth(stuck.greatest)).toBe(16.2);
  });
  it('asks for what is missing of it, unless a guard is stated', () => {
    const known = ['room-when-open 1 m', 'ground-gap 200 mm'];
    expect(unstated([...swing, ...known])).toEqual(['the gap at the hinge: hinge-gap, hinge-offset, thickness']);
    expect(unstated([...swing, ...known, 'hinge-gap 10 mm', 'thickness 40 mm'])).toEqual(['the gap at the hinge: hinge-offset']);
    expect(unstated([...swing, ...known, 'hinge-guard 300 mm'])).toEqual([]);
  });
});

describe('the gap under the leaf', () => {
  it('is one from memory, for feet, toes, hands and fingers', () => {
    expect(only('underside', [...swing, 'ground-gap 60 mm'])).toMatchObject({
      where: 'underside of the leaf and the ground',
      movements: ['closing', 'opening'],
      least: 0.06,
      greatest: 0.06,
      parts: ['foot', 'hand'],
      enough: 0.12,
      standing: 'from memory',
      line: 'ground-gap 60 mm',
    });
    expect(only('underside', [...swing, 'ground-gap 24 mm']).parts).toEqual(['foot', 'toes', 'hand', 'finger']);
    // Just 8 mm let a finger in.
    expect(only('underside', [...swing, 'ground-gap 8 mm']).parts).toEqual(['finger']);
  });
  it('on rising ground it ends at nothing', () => {
    // 2 m of 5 % are 100 mm.
    expect(only('underside', [...swing, 'ground-gap 60 mm', 'slope 5 %'])).toMatchObject({
      least: 0,
      greatest: 0.06,
      parts: ['foot', 'toes', 'hand', 'finger'],
    });
  });
});

describe('what a sliding leaf runs past', () => {
  const through = (infill: string, passes: string, users?: string): Hazard =>
    only('reach-through', [...slide, `infill-opening ${infill}`, `passes ${passes}`], users);
  it('a post, by the table for grown persons', () => {
    expect(only('reach-through', [...slide, 'infill-opening slot 12 mm', 'passes post 99 mm'])).toMatchObject({
      where: 'openings of the leaf and the post that it runs past',
      movements: ['closing', 'opening'],
      least: 0.099,
      greatest: 0.099,
      parts: ['finger'],
      enough: 0.1,
      standing: 'published',
      line: 'passes post 99 mm',
    });
    expect(through('slot 12.1 mm', 'fence 119 mm')).toMatchObject({
      where: 'openings of the leaf and the fence that it runs past',
      parts: ['hand', 'finger'],
      enough: 0.12,
    });
    expect(through('round 40 mm', 'fence 119 mm')).toMatchObject({ parts: ['hand', 'finger'], enough: 0.12 });
    expect(through('slot 40 mm', 'fence 849 mm')).toMatchObject({ parts: ['arm', 'hand', 'finger'], enough: 0.85, standing: 'published' });
  });
  it('and where it is far enough for these, by the one for children, from memory: their arm goes through a slot of 15 mm', () => {
    for (const users of ['public', undefined])
      expect(through('slot 15 mm', 'post 120 mm', users)).toMatchObject({
        parts: ['arm', 'hand', 'finger'],
        enough: 0.9,
        standing: 'from memory',
      });
    expect(kinds([...slide, 'infill-opening slot 15 mm', 'passes post 120 mm'], 'trained')).toEqual(['closing-edge', 'running-past']);
    // By both tables 100 mm are enough.
    expect(kinds([...slide, 'infill-opening slot 12 mm', 'passes post 100 mm'], 'public')).toEqual(['closing-edge', 'running-past']);
  });
  it('beyond the end of a table no distance is said to be enough, and never less than for a smaller opening', () => {
    expect(through('square 200 mm', 'post 849 mm')).toMatchObject({
      enough: undefined,
      standing: 'published',
      parts: ['arm', 'hand', 'finger'],
    });
    expect(kinds([...slide, 'infill-opening square 200 mm', 'passes post 850 mm'], 'trained')).toEqual(['closing-edge']);
    expect(through('square 100 mm', 'post 899 mm', 'public')).toMatchObject({ enough: 0.9, standing: 'from memory' });
    for (const size of ['101 mm', '200 mm'])
      expect(through(`square ${size}`, 'post 899 mm', 'public'), size).toMatchObject({
        enough: undefined,
        standing: 'from memory',
        parts: ['arm', 'hand', 'finger'],
      });
    expect(kinds([...slide, 'infill-opening square 200 mm', 'passes post 900 mm'], 'public')).toEqual(['closing-edge']);
  });
  it('a smooth wall, however the leaf is filled', () => {
    expect(only('running-past', [...slide, 'passes wall 130 mm'])).toMatchObject({
      where: 'leaf and the wall that it runs past',
      movements: ['closing', 'opening'],
      least: 0.13,
      greatest: 0.13,
      parts: ['head', 'leg'],
      enough: 0.2,
      standing: 'published',
      line: 'passes wall 130 mm',
    });
  });
  it('each of several', () =>
    expect(
      kinds([...slide, 'infill-opening slot 40 mm', 'passes wall 100 mm', 'passes nothing', 'passes post 100 mm', 'passes fence 100 mm']),
    ).toEqual(['closing-edge', 'running-past', 'reach-through', 'reach-through']));
  it.each<[readonly string[], string]>([
    [[], 'passes, infill-opening'],
    [['infill-opening slot 40 mm'], 'passes'],
    [['infill-opening closed'], 'passes'],
    [['passes nothing'], ''],
    [['passes wall 100 mm'], ''],
    [['passes wall'], 'passes'],
    [['passes wall', 'passes post'], 'passes'],
    [['passes wall', 'passes post 100 mm'], 'passes, infill-opening'],
    [['passes post 100 mm'], 'infill-opening'],
    // A shape without a size says as little.
    [['passes post 100 mm', 'infill-opening slot'], 'infill-opening'],
    [['passes post 100 mm', 'infill-opening closed'], ''],
    [['passes post 100 mm', 'infill-opening slot 40 mm'], ''],
  ])('with %j it asks for: %s', (lines, facts) =>
    expect(unstated([...slide, 'room-when-open 1 m', ...lines])).toEqual(facts === '' ? [] : [`what it runs past: ${facts}`]),
  );
});

it('a leaf of which no movement is stated has its closing edge, and is asked for no gap that belongs to one', () => {
  expect(kinds(['width 2 m'])).toEqual(['closing-edge']);
  expect(unstated(['width 2 m'])).toEqual(['the room behind it when open: room-when-open']);
});

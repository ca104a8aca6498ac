// Made-up sites for the measurements: from a seed, always the same ones. Each is one plain object that is printed both
// as `.gate` text and as YAML with the same facts and comments. Words, slots and the JSON schema come from the
// vocabulary table, which the caller hands over, so that the three can't drift apart.
//
// In the YAML a quantity is a string as a person would write it ("2.10 m"), a line of one slot is a plain value, a line
// of several is a flow mapping, and a line that may repeat is a list of those. That is the shortest form that keeps
// every fact apart; its parser has less to do than with {value, unit}.

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
export function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const places = [
  'Alder',
  'Bracken',
  'Clover',
  'Dunlin',
  'Ember',
  'Fallow',
  'Gannet',
  'Hazel',
  'Iris',
  'Juniper',
  'Knot',
  'Larch',
  'Meadow',
  'Nettle',
  'Osier',
  'Plover',
  'Quince',
  'Rush',
  'Sedge',
  'Tern',
];
const grounds = ['Yard', 'Quay', 'Court', 'Works', 'Nursery', 'School', 'Depot', 'Mews', 'Farm', 'Terrace', 'Clinic', 'Stores'];
const sides = ['north entrance', 'south gate', 'rear access', 'staff car park', 'deliveries', 'lower road', 'bin store', 'visitors'];
const pairs = [
  ['west', 'east'],
  ['north', 'south'],
  ['left', 'right'],
  ['upper', 'lower'],
  ['road', 'yard'],
  ['first', 'second'],
];
const remarks = [
  'surveyed with the owner, levels checked',
  'posts are old brick piers with new steel inside',
  'ground falls away to the road, drain kept clear',
  'leaf rehung on the lower hinge',
  'measured twice, the drawing is wrong',
  'keep clear of the letter box',
  'the neighbour shares this wall',
  'children pass here on their way to school',
  'cable is in the old duct, no room for another',
  'replaced after the storm',
];
const initials = ['KL', 'MT', 'AO', 'RV', 'JS'];
const shortRemarks = [
  'as found',
  'on the drawing',
  'by tape',
  'agreed with the owner',
  'spare is coiled in the box',
  'see the photograph',
  'was longer',
];

/** The places where a slip is put, and what it does to the lines of a site. */
const slips = {
  'no unit': (site) => change(site, 'leaf', 'height', (line) => (line.slots.value = line.slots.value.split(' ')[0])),
  'misspelt word': (site) => change(site, 'leaf', 'mass', (line) => (line.as = 'mas')),
  'unknown choice': (site) => change(site, 'site', 'sight', (line) => (line.slots.value = 'partly')),
  'unknown name': (site) => change(site, 'drive', 'moves', (line) => (line.slots.leaf = line.slots.leaf + 'n')),
  'wrong unit': (site) => change(site, 'motion', 'dwell', (line) => (line.slots.value = '25 kg')),
  'long seat': (site) =>
    site.blocks.every((block) => block.lines.every((line) => line.word !== 'accept')) &&
    change(site, 'motion', 'seat', (line) => (line.slots.value = '4 s')),
};

function change(site, blockWord, lineWord, edit) {
  for (const block of site.blocks)
    if (block.word === blockWord)
      for (const line of block.lines)
        if (line.word === lineWord) {
          edit(line);
          return true;
        }
  return false;
}

/** `count` sites. Each is {name, kind, slip, uses, notes, blocks: [{word, name, model, title, note, lines: [{word, slots, note}]}]}. */
export function generate(count, seed = 20261125) {
  const next = random(seed);
  const sites = [];
  for (let i = 0; i < count; i++) sites.push(siteOf(next, i));
  return sites;
}

function siteOf(next, index) {
  const chance = (share) => next() < share;
  const pick = (list) => list[Math.floor(next() * list.length)];
  const between = (low, high, step) => low + Math.round((next() * (high - low)) / step) * step;
  const metres = (value) => (chance(0.2) ? `${Math.round(value * 1000)} mm` : `${value.toFixed(2)} m`);
  const note = (share, list) => (chance(share) ? pick(list) : undefined);

  const kind = pick(['single', 'single', 'single', 'double', 'double', 'double', 'double', 'sliding', 'sliding', 'sliding']);
  const [one, two] = pick(pairs);
  const blocks = [];
  const add = (word, name, model, title) => {
    const block = { word, name, model, title, note: undefined, lines: [] };
    blocks.push(block);
    const adder = (line, slots, remark) => {
      block.lines.push({ word: line, slots, note: remark });
      return adder;
    };
    adder.block = block;
    return adder;
  };

  const users = pick(['public', 'public', 'limited', 'trained']);
  const site = add('site', undefined, undefined, `${pick(places)} ${pick(grounds)}, ${pick(sides)}`);
  site('rules', { value: 'europe' })('users', { value: users }, note(0.2, remarks))('sight', { value: 'none' });
  site('supply', { voltage: '230 V', frequency: '50 Hz' });
  if (chance(0.5)) site('vehicle', { length: `${between(6, 12, 0.5)} m`, speed: `${between(6, 10, 1)} km/h` });

  // Leaves and drives. Mountings are ones that work: enough stroke and no dead point inside the travel.
  const leafNames = kind === 'double' ? [one, two] : [pick([one, 'main', 'gate', 'entrance'])];
  const driveModel = kind === 'sliding' ? 'birch-rack' : pick(['birch-ram', 'birch-ram', 'birch-arm', 'birch-floor']);
  const driveSuffix = { 'birch-rack': 'rack', 'birch-ram': 'ram', 'birch-arm': 'arm', 'birch-floor': 'shaft' }[driveModel];
  const opening = between(90, 98, 1);
  const way = 'inward';
  const height = between(1.2, 2.2, 0.05);
  const widest = { 'birch-rack': 6, 'birch-ram': 3.2, 'birch-arm': 2.4, 'birch-floor': 2.6 }[driveModel];
  const equalLeaves = between(1.4, widest, 0.05);
  const mounting = {
    along: between(130, 170, 5),
    out: between(120, 140, 5),
    bracket: between(720, 860, 10),
    armAlong: between(120, 180, 10),
    armOut: between(120, 200, 10),
    armBracket: between(400, 460, 10),
  };
  leafNames.forEach((name, order) => {
    const leaf = add('leaf', name);
    leaf.block.note = note(0.5, remarks);
    const width = kind === 'sliding' ? between(2.5, widest, 0.1) : equalLeaves;
    leaf('width', { value: metres(width) }, note(0.2, shortRemarks))('height', { value: metres(height) });
    leaf('mass', { value: `${Math.round(width * height * between(30, 45, 1))} kg` }, note(0.15, shortRemarks));
    if (kind === 'sliding') leaf('slides', { way: pick(['left', 'right']), distance: metres(width - 0.2) });
    else leaf('opens', { way, angle: `${opening} deg` });
    // What is around it, so that it can be judged whole.
    leaf('room-when-open', { value: '900 mm' });
    if (kind === 'sliding') leaf('passes', { what: 'nothing' })('infill-opening', { shape: 'closed' })('ground-gap', { value: '150 mm' });
    else leaf('hinge-guard', { value: '350 mm' })('ground-gap', { value: '150 mm' });
    if (kind === 'double' && order === 0)
      leaf('closes', chance(0.5) ? { onto: two, overlap: `${between(30, 50, 5)} mm` } : { onto: two, overlap: '40 mm', gap: '20 mm' });
  });
  for (const name of leafNames) {
    const drive = add('drive', `${name}-${driveSuffix}`, driveModel);
    drive('moves', { leaf: name })('release', { value: 'key' });
    if (driveModel === 'birch-ram')
      drive(
        'post-bracket',
        { along: `${mounting.along} mm`, out: `${mounting.out} mm` },
        note(0.15, shortRemarks),
      )('leaf-bracket', { value: metres(mounting.bracket / 1000) });
    if (driveModel === 'birch-arm')
      drive(
        'shaft',
        { along: `${mounting.armAlong} mm`, out: `${mounting.armOut} mm` },
        note(0.15, shortRemarks),
      )('leaf-bracket', { value: `${mounting.armBracket} mm` });
  }

  // Sensors: a beam or a curtain across, an edge on every leading edge.
  const pairPanel = kind === 'double' || (kind === 'single' && chance(0.5));
  const across = pairPanel
    ? pick(['finch-beam', 'finch-beam', 'finch-relay', 'finch-curtain'])
    : pick(['finch-beam', 'finch-beam', 'finch-curtain']);
  const acrossName = across === 'finch-curtain' ? 'curtain' : pick(['lower-beam', 'road-beam', 'post-beam']);
  const beam = add('sensor', acrossName, across);
  beam('watches', { movements: across === 'finch-curtain' ? ['closing', 'opening'] : ['closing'] })(
    'height',
    { value: `${between(150, 300, 10)} mm` },
    note(0.2, shortRemarks),
  );
  const edges = [];
  const edge = (name, leaf, part, movement) => {
    edges.push(name);
    add('sensor', name, 'finch-edge')('watches', { movements: [movement] })('on', { leaf, edge: part })('terminator', {
      value: '8.2 kohm',
    });
  };
  if (kind === 'double') for (const name of leafNames) edge(`${name}-edge`, name, 'closing-edge', 'closing');
  else {
    edge(`${leafNames[0]}-edge`, leafNames[0], 'closing-edge', 'closing');
    edge(`${leafNames[0]}-tail`, leafNames[0], kind === 'sliding' ? 'opening-edge' : 'hinge-edge', 'opening');
  }

  const fobs = add('control', pick(['fobs', 'residents', 'drivers']));
  fobs('by', { value: 'transmitter' })('acts', { value: 'impulse' });
  let wired;
  if (chance(0.4)) {
    wired = pick(['entry', 'reception', 'porter']);
    add('control', wired)('by', { value: pick(['intercom', 'keypad', 'key-switch']) })('acts', { value: 'impulse' })('sight', {
      value: 'none',
    });
  }

  // The panel: everything wired, every input that is not used linked.
  const t = pairPanel
    ? {
        drives: [
          ['LA1', 'LA2'],
          ['LB1', 'LB2'],
        ],
        edges: [
          ['E1', 'E0'],
          ['E2', 'E0'],
        ],
        command: ['K1', 'K0'],
        stop: ['H1', 'H0'],
        two: ['T1', 'T0'],
        safety: [
          ['G1', 'G0'],
          ['G2', 'G0'],
        ],
      }
    : {
        drives: [['D1', 'D2']],
        edges: [
          ['R1', 'R0'],
          ['R2', 'R0'],
        ],
        command: ['C1', 'C0'],
        stop: ['C2', 'C0'],
        two: ['Y1', 'Y0'],
        safety: [
          ['S1', 'S0'],
          ['S2', 'S0'],
        ],
      };
  const panel = add('panel', 'main', pairPanel ? 'rowan-pair' : 'marram-one');
  panel.block.note = note(0.5, remarks);
  panel('isolator', { place: 'beside the panel, takes a padlock' });
  leafNames.forEach((name, order) => panel('wire', { device: `${name}-${driveSuffix}`, to: t.drives[order] }));
  const relay = across === 'finch-relay';
  panel('wire', { device: acrossName, to: relay ? t.safety[0] : t.two }, note(0.15, shortRemarks));
  if (relay)
    panel('wire', { device: acrossName, part: 'supply', to: ['V1', 'V0'] })('wire', { device: acrossName, part: 'test', to: ['X1'] });
  edges.forEach((name, order) => panel('wire', { device: name, to: t.edges[order] }));
  if (wired !== undefined) panel('wire', { device: wired, to: t.command });
  panel('link', { terminals: t.stop });
  for (const terminals of relay ? t.safety.slice(1) : t.safety) panel('link', { terminals });
  const automatic = chance(0.7);
  if (pairPanel)
    panel('select', { selector: 'reply', option: automatic ? 'closes-alone' : 'steps' })('registered', { sensors: [acrossName, ...edges] });

  const motion = add('motion');
  motion('slow-zone', chance(0.4) ? { last: `${between(10, 20, 5)} %`, speed: '40 %' } : { last: `${between(10, 20, 1)} %` });
  const longSeat = chance(0.04);
  motion('seat', { value: longSeat ? '2.5 s' : `${between(1, 2, 0.1).toFixed(1)} s` });
  if (kind === 'double')
    motion('lag', { movement: 'opening', time: `${between(4, 6, 0.5)} s` })(
      'lag',
      { movement: 'closing', time: `${between(5, 8, 0.5)} s` },
      note(0.2, shortRemarks),
    );
  if (automatic) motion('dwell', { value: `${between(15, 60, 1)} s` });
  if (chance(0.5)) motion('pre-warning', { value: `${between(1, 3, 0.5)} s` });
  if (longSeat)
    motion('accept', { rule: 'seat-outside-practice', reason: 'worn stops, new ones are on order', initials: 'KL', until: '2027-03-31' });

  const uses = ['drives', 'panels', 'sensors'];
  if (kind !== 'double' && chance(0.5)) {
    uses.push('cables');
    add('cable', `${acrossName}-feed`, 'heron-signal')('feeds', { device: acrossName })('length', { value: `${between(6, 40, 1)} m` })(
      'carries',
      { current: '0.1 A', voltage: '24 V' },
    );
  }

  const made = {
    name: `site-${String(index).padStart(5, '0')}`,
    kind,
    slip: undefined,
    notes: [
      `Surveyed ${between(1, 28, 1)} ${pick(['March', 'May', 'June', 'September'])} by ${pick(initials)}: ${pick(remarks)}.`,
      `${pick(remarks)}; ${pick(remarks)}`,
    ],
    uses: uses.map((library) => `../../library/${library}.gate`),
    blocks,
  };
  if (index % 17 === 5) {
    let wanted = pick(Object.keys(slips));
    if (!slips[wanted](made)) slips[(wanted = 'no unit')](made);
    made.slip = wanted;
  }
  return made;
}

const quoted = (value) => `"${value.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
const remark = (value) => (value === undefined ? '' : ` # ${value}`);

/** What the table says of a line; `accept` may stand in any block. */
function specOf(table, block, word) {
  const spec = table.blocks[block]?.lines[word] ?? table.anywhereLines[word];
  if (spec === undefined) throw new Error(`the vocabulary has no line “${word}” in “${block}”; tests/bench/sites.mjs has to follow it`);
  return spec;
}

function slotsOf(spec) {
  return Object.entries(spec.slots).filter(([, slot]) => slot.kind !== 'tolerance');
}

/** A site as `.gate` text. */
export function gateText(site, table) {
  const out = ['language 1', ...site.notes.map((line) => `# ${line}`)];
  for (const path of site.uses) out.push(`use ${quoted(path)}`);
  for (const block of site.blocks) {
    out.push('');
    if (block.note !== undefined) out.push(`# ${block.note}`);
    out.push(
      [block.word, block.name, block.model && `: ${block.model}`, block.title && quoted(block.title), '{'].filter(Boolean).join(' '),
    );
    for (const line of block.lines) {
      const parts = [line.as ?? line.word];
      const slots = slotsOf(specOf(table, block.word, line.word));
      for (const key of Object.keys(line.slots))
        if (!slots.some(([slot]) => slot === key))
          throw new Error(`the vocabulary has no slot “${key}” in “${line.word}”; tests/bench/sites.mjs has to follow it`);
      for (const [key, slot] of slots) {
        const value = line.slots[key];
        if (value === undefined) continue;
        if (slot.after !== undefined) parts.push(slot.after);
        parts.push(Array.isArray(value) ? value.join(' ') : slot.kind === 'text' ? quoted(value) : value);
      }
      out.push(`  ${parts.join(' ')}${remark(line.note)}`);
    }
    out.push('}');
  }
  return out.join('\n') + '\n';
}

/** What a YAML parser must make of `yamlText`. A slip keeps its place: a misspelt word is a misspelt key. */
export function plain(site, table) {
  const out = { language: 1, use: [...site.uses] };
  for (const block of site.blocks) {
    const spec = table.blocks[block.word];
    const body = {};
    if (block.title !== undefined) body.title = block.title;
    if (block.model !== undefined) body.model = block.model;
    for (const line of block.lines) {
      const lineSpec = specOf(table, block.word, line.word);
      const value = lineValue(line, lineSpec);
      const key = line.as ?? line.word;
      if (lineSpec.many === true) (body[key] ??= []).push(value);
      else body[key] = value;
    }
    if (spec.named) (out[block.word] ??= {})[block.name] = body;
    else out[block.word] = body;
  }
  return out;
}

function lineValue(line, spec) {
  const slots = slotsOf(spec);
  const asRead = (value, slot) => (slot.kind === 'quantity' && /^[\d.]+$/.test(value) ? Number(value) : value);
  if (slots.length === 0) return true;
  if (slots.length === 1) return asRead(line.slots[slots[0][0]], slots[0][1]);
  const out = {};
  for (const [key, slot] of slots) if (line.slots[key] !== undefined) out[key] = asRead(line.slots[key], slot);
  return out;
}

/** A site as YAML. */
export function yamlText(site, table) {
  const out = ['language: 1', ...site.notes.map((line) => `# ${line}`), 'use:'];
  for (const path of site.uses) out.push(`  - ${path}`);
  const order = [...new Set(site.blocks.map((block) => block.word))];
  for (const word of order) {
    const { named } = table.blocks[word];
    out.push('', `${word}:`);
    for (const block of site.blocks) {
      if (block.word !== word) continue;
      const indent = named ? '    ' : '  ';
      if (block.note !== undefined) out.push(`  # ${block.note}`);
      if (named) out.push(`  ${block.name}:`);
      if (block.title !== undefined) out.push(`${indent}title: ${quoted(block.title)}`);
      if (block.model !== undefined) out.push(`${indent}model: ${block.model}`);
      const done = new Set();
      for (const line of block.lines) {
        if (done.has(line.word)) continue;
        done.add(line.word);
        const spec = specOf(table, block.word, line.word);
        const key = line.as ?? line.word;
        if (spec.many !== true) {
          out.push(`${indent}${key}: ${yamlValue(line, spec)}${remark(line.note)}`);
          continue;
        }
        out.push(`${indent}${key}:`);
        for (const other of block.lines)
          if (other.word === line.word) out.push(`${indent}  - ${yamlValue(other, spec)}${remark(other.note)}`);
      }
    }
  }
  return out.join('\n') + '\n';
}

function yamlValue(line, spec) {
  const slots = slotsOf(spec);
  const one = (value, slot) =>
    Array.isArray(value) ? `[${value.join(', ')}]` : slot.kind === 'text' || slot.kind === 'date' ? quoted(value) : value;
  if (slots.length === 0) return 'true';
  if (slots.length === 1) return one(line.slots[slots[0][0]], slots[0][1]);
  const parts = slots.flatMap(([key, slot]) => (line.slots[key] === undefined ? [] : [`${key}: ${one(line.slots[key], slot)}`]));
  return `{ ${parts.join(', ')} }`;
}

const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const namePattern = '^[A-Za-z][A-Za-z0-9-]*$';
const siteWords = ['site', 'leaf', 'drive', 'sensor', 'control', 'panel', 'motion', 'cable'];

/** A JSON schema for the YAML: required keys, no unknown keys, every choice as an enum, every quantity by a pattern of its units. */
export function schemaOf(table) {
  const properties = {
    language: { const: 1 },
    use: { type: 'array', items: { type: 'string', pattern: '^[^/\\\\].*\\.gate$' }, uniqueItems: true },
  };
  for (const word of siteWords) {
    const spec = table.blocks[word];
    const body = blockSchema(spec, table);
    properties[word] = spec.named ? { type: 'object', propertyNames: { pattern: namePattern }, additionalProperties: body } : body;
  }
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    type: 'object',
    properties,
    required: ['language', 'site'],
    additionalProperties: false,
  };
}

function blockSchema(spec, table) {
  const properties = {};
  const required = [];
  if (spec.title === true) properties.title = { type: 'string', minLength: 1 };
  if (spec.model !== undefined) {
    properties.model = { type: 'string', pattern: namePattern };
    required.push('model');
  }
  for (const [word, line] of Object.entries({ ...spec.lines, ...table.anywhereLines })) {
    const one = lineSchema(line, table);
    properties[word] = line.many === true ? { type: 'array', items: one, minItems: 1 } : one;
    if (line.required === true) required.push(word);
  }
  return { type: 'object', properties, required, additionalProperties: false };
}

function lineSchema(line, table) {
  const slots = slotsOf(line);
  const hasTolerance = Object.values(line.slots).some((slot) => slot.kind === 'tolerance');
  if (slots.length === 0) return { const: true };
  if (slots.length === 1) return slotSchema(slots[0][1], table, hasTolerance);
  const properties = Object.fromEntries(slots.map(([key, slot]) => [key, slotSchema(slot, table, hasTolerance)]));
  return {
    type: 'object',
    properties,
    required: slots.flatMap(([key, slot]) => (slot.optional === true ? [] : [key])),
    additionalProperties: false,
  };
}

function slotSchema(slot, table, hasTolerance) {
  const one = oneSchema(slot, table, hasTolerance);
  return slot.many === true ? { type: 'array', items: one, minItems: 1 } : one;
}

function oneSchema(slot, table, hasTolerance) {
  const number = '[+-]?\\d+(\\.\\d+)?';
  const unitsOf = (dimensions) =>
    table.units
      .filter((unit) => dimensions.includes(unit.dimension))
      .flatMap((unit) => [unit.name, ...unit.also])
      .map(escaped)
      .join('|');
  switch (slot.kind) {
    case 'quantity':
      return { type: 'string', pattern: `^${number} (${unitsOf([slot.dimension])})${hasTolerance ? `( ± ${number} %)?` : ''}$` };
    case 'range':
      return { type: 'string', pattern: `^${number}( (${unitsOf(slot.dimensions)}))? \\.\\. ${number} (${unitsOf(slot.dimensions)})$` };
    case 'count':
      return { type: 'integer', minimum: slot.min, maximum: slot.max };
    case 'choice':
      return { enum: Object.keys(slot.options) };
    case 'date':
      return { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' };
    case 'text':
      return { type: 'string', minLength: 1 };
    default:
      return { type: 'string', pattern: namePattern };
  }
}

/**
 * One big file of at least `lines` lines: a site with as many installations in it as that takes, each with names of its
 * own. For measuring what a keystroke costs in a file that has grown.
 */
export function bigText(lines, table, seed = 7) {
  const next = random(seed);
  let text = '';
  let have = 0;
  for (let i = 0; have < lines; i++) {
    const site = siteOf(next, 0);
    const suffix = (name) => (name === undefined ? undefined : `${name}-${i}`);
    const names = new Set(site.blocks.flatMap((block) => (block.name === undefined ? [] : [block.name])));
    const kept = site.blocks.filter((block) => i === 0 || (block.word !== 'site' && block.word !== 'motion'));
    for (const block of kept) {
      block.name = suffix(block.name);
      for (const line of block.lines)
        for (const [key, slot] of slotsOf(specOf(table, block.word, line.word))) {
          if (
            slot.kind !== 'ref' ||
            line.slots[key] === undefined ||
            slot.to === 'terminal' ||
            slot.to === 'option' ||
            slot.to === 'selector' ||
            slot.to === 'rule'
          )
            continue;
          const value = line.slots[key];
          line.slots[key] = Array.isArray(value)
            ? value.map((name) => (names.has(name) ? suffix(name) : name))
            : names.has(value)
              ? suffix(value)
              : value;
        }
    }
    const part = gateText(
      {
        ...site,
        uses: i === 0 ? ['drives', 'panels', 'sensors', 'cables'].map((library) => `../../library/${library}.gate`) : [],
        blocks: kept,
      },
      table,
    );
    const body = i === 0 ? part : part.slice(part.indexOf('\n\n'));
    text += body;
    have += body.split('\n').length - 1;
  }
  return text;
}

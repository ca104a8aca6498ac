// Texts that grow in one respect each, for the measure of how work grows with a file: the same small site, and then so many of one
// thing. `lines` is about how long the text is; where a list in one line grows, it is how many words stand in it.

const uses = ['drives', 'panels', 'sensors', 'cables'].map((name) => `use "../library/${name}.gate"`).join('\n');
const site = 'site "Growing" {\n  rules europe\n  users limited\n  sight none\n  supply 230 V 50 Hz\n}\n';
const swing = (name, more = '') => `leaf ${name} {\n  width 2.10 m\n  height 1.80 m\n  mass 165 kg\n  opens inward 95 deg\n${more}}\n`;
const ram = (name, leaf) => `drive ${name} : birch-ram {\n  moves ${leaf}\n  post-bracket 140 mm by 120 mm\n  leaf-bracket 780 mm\n}\n`;
const edge = (name, more) => `sensor ${name} : finch-edge {\n  watches closing\n${more}}\n`;
const beam = (name, more = '') => `sensor ${name} : finch-beam {\n  watches closing\n  height 200 mm\n${more}}\n`;
const fobs = 'control fobs {\n  by transmitter\n  acts impulse\n}\n';
const motion = (more = '') =>
  `motion {\n  seat 1.5 s\n  lag opening 3 s\n  lag closing 4 s\n  dwell 25 s\n  pre-warning 2 s\n  force 60 %\n  slow-zone last 10 %\n${more}}\n`;
const head = `language 1\n${uses}\n\n${site}`;
const wires = 'wire west-ram to LA1 LA2\n  wire east-ram to LB1 LB2\n  wire west-edge to E1 E0\n  wire fobs to K1 K0';
const panel = (more = '') => `panel main : rowan-pair {\n  ${wires}\n${more}}\n`;
const pair =
  swing('west', '  closes onto east overlap 40 mm gap 20 mm\n') +
  swing('east') +
  ram('west-ram', 'west') +
  ram('east-ram', 'east') +
  edge('west-edge', '  on west closing-edge\n  terminator 8.2 kohm\n') +
  fobs;
const gate = head + pair + panel() + motion();

const times = (count, one) => {
  let text = '';
  for (let i = 0; i < count; i++) text += one(i);
  return text;
};
/** So many of a part that has so many lines each. */
const many = (each, one) => (lines) => times(Math.floor(lines / each), one);
const list = (one) => (lines) => times(lines, (i) => ` ${one(i)}`);
/** The usual gate, and much of something behind it. */
const behind = (part) => (lines) => gate + part(lines);
/** The usual gate, its panel and motion with much in them. */
const inPanel = (part) => (lines) => head + pair + panel(part(lines)) + motion();
const inMotion = (part) => (lines) => head + pair + panel() + motion(part(lines));
const inLeaf = (part) => (lines) => head + pair + swing('third', part(lines)) + panel() + motion();
const inModel = (part) => (lines) => `${gate}panel-model large "Large" {\n  supply 230 V\n  leaves 2\n${part(lines)}}\n`;
const inFunction = (part) => (lines) => `${gate}function stop "Stops" {\n  required-level c\n  parts west-edge main\n${part(lines)}}\n`;
/** A panel whose model has a great many terminals, in the same file. */
const large = (terminals, part) => (lines) => {
  const count = Math.floor(lines / 2);
  const model = `panel-model large "Large" {\n  supply 230 V\n  leaves 2\n  terminal C0 common\n${times(count, terminals)}}\n`;
  return `${head}${model}${pair}panel main : large {\n${times(count, part)}}\n${motion()}`;
};
const gateOf = (i) =>
  swing(`west-${i}`, `  closes onto east-${i} overlap 40 mm gap 20 mm\n`) +
  swing(`east-${i}`) +
  ram(`west-ram-${i}`, `west-${i}`) +
  ram(`east-ram-${i}`, `east-${i}`) +
  edge(`west-edge-${i}`, `  on west-${i} closing-edge\n  terminator 8.2 kohm\n`) +
  `control fobs-${i} {\n  by transmitter\n  acts impulse\n}\n` +
  `panel main-${i} : rowan-pair {\n  wire west-ram-${i} to LA1 LA2\n  wire east-ram-${i} to LB1 LB2\n  wire west-edge-${i} to E1 E0\n  wire fobs-${i} to K1 K0\n}\n`;

/** Each kind: a text of about so many lines. */
export const kinds = {
  // Many of each block.
  gates: (lines) => head + many(41, gateOf)(lines) + motion(),
  'bare leaves': behind(many(6, (i) => swing(`leaf-${i}`))),
  'driven leaves': behind(many(11, (i) => swing(`leaf-${i}`) + ram(`ram-${i}`, `leaf-${i}`))),
  'sliding leaves': behind(
    many(
      9,
      (i) =>
        `leaf run-${i} {\n  width 4 m\n  height 1.8 m\n  mass 300 kg\n  slides left 4.2 m\n}\ndrive rack-${i} : birch-rack {\n  moves run-${i}\n}\n`,
    ),
  ),
  'leaves that overlap': (lines) =>
    head +
    many(12, (i) => swing(`leaf-${i}`, `  closes onto leaf-${i + 1} overlap 40 mm gap 20 mm\n`) + ram(`ram-${i}`, `leaf-${i}`))(lines) +
    motion(),
  'drives on one leaf': behind(many(5, (i) => ram(`ram-${i}`, 'west'))),
  'sensors on one leaf': behind(many(5, (i) => edge(`edge-${i}`, '  on west closing-edge\n  terminator 8.2 kohm\n'))),
  'sensors on one leaf, wired': (lines) =>
    head +
    pair +
    many(6, (i) => edge(`edge-${i}`, '  on west closing-edge\n  terminator 8.2 kohm\n'))(lines) +
    panel(many(6, (i) => `  wire edge-${i} to E1 E0\n`)(lines)) +
    motion(),
  'beams of the opening': behind(many(4, (i) => beam(`beam-${i}`))),
  'beams of the opening, wired': (lines) =>
    head +
    pair +
    many(6, (i) => beam(`beam-${i}`))(lines) +
    panel(many(6, (i) => `  wire beam-${i} to T1 T0\n  registered beam-${i}\n`)(lines)) +
    motion(),
  'edges chained': (lines) =>
    head +
    pair +
    many(5, (i) => edge(`edge-${i}`, `  on west closing-edge\n  chains-into edge-${i + 1}\n`))(lines) +
    panel('  wire edge-0 to E2 E0\n') +
    motion(),
  'edges chained into one': behind(many(5, (i) => edge(`edge-${i}`, '  on west closing-edge\n  chains-into west-edge\n'))),
  controls: behind(many(4, (i) => `control button-${i} {\n  by push-button\n  acts impulse\n}\n`)),
  'controls, wired': (lines) =>
    head +
    pair +
    many(5, (i) => `control button-${i} {\n  by push-button\n  acts impulse\n}\n`)(lines) +
    panel(many(5, (i) => `  wire button-${i} to K1 K0\n`)(lines)) +
    motion(),
  panels: behind(many(3, (i) => `panel panel-${i} : rowan-pair {\n  link H1 H0\n}\n`)),
  'panels on one drive': behind(many(3, (i) => `panel panel-${i} : rowan-pair {\n  wire west-ram to LA1 LA2\n}\n`)),
  'cables to one panel': behind(
    many(5, (i) => `cable feed-${i} : heron-mains {\n  feeds main\n  length 40 m\n  carries 2 A at 230 V\n}\n`),
  ),
  'cables to devices': (lines) =>
    head +
    pair +
    many(
      10,
      (i) => beam(`beam-${i}`) + `cable feed-${i} : heron-signal {\n  feeds beam-${i}\n  length 40 m\n  carries 0.3 A at 24 V\n}\n`,
    )(lines) +
    panel(many(10, (i) => `  wire beam-${i} to T1 T0\n`)(lines)) +
    'cable main-feed : heron-mains {\n  feeds main\n  length 40 m\n  carries 2 A at 24 V\n}\n' +
    motion(),
  functions: behind(many(4, (i) => `function stop-${i} "Stops" {\n  required-level c\n  parts west-edge main\n}\n`)),
  'measured blocks': behind(
    many(
      5,
      (i) =>
        `measured {\n  on 2026-05-14\n  by "KL"\n  force west closing gap ${300 + (i % 50)} mm height 900 mm peak 310 N after-750-ms 96 N after-5-s 12 N\n}\n`,
    ),
  ),
  'sensor models': behind(many(5, (i) => `sensor-model model-${i} "Beam" {\n  kind beam\n  output relay\n  contact normally-closed\n}\n`)),
  'drive models': behind(
    many(6, (i) => `drive-model model-${i} "Ram" {\n  kind linear-ram\n  stroke 350 mm\n  speed 16 mm/s\n  thrust 2000 N\n}\n`),
  ),
  'cable models': behind(many(4, (i) => `cable-model model-${i} "Cable" {\n  area 0.75 mm2\n  class 5\n}\n`)),
  'panel models': behind(
    many(
      6,
      (i) =>
        `panel-model model-${i} "Panel" {\n  supply 230 V\n  leaves 2\n  terminal S0 common\n  terminal S1 safety-input normally-closed common S0\n}\n`,
    ),
  ),
  'sites said again': behind(many(4, () => 'site "Again" {\n  rules europe\n  users limited\n}\n')),
  'motions said again': behind(many(3, () => 'motion {\n  seat 1.5 s\n}\n')),

  // Many lines of one kind in a block.
  'leaf: passes': (lines) =>
    `${head}leaf run {\n  width 4 m\n  height 1.8 m\n  mass 300 kg\n  slides left 4.2 m\n${many(1, (i) => `  passes post ${10 + (i % 90)} mm\n`)(lines)}}\ndrive rack : birch-rack {\n  moves run\n}\n`,
  'leaf: a line said again': inLeaf(many(1, () => '  width 2 m\n')),
  'leaf: words unknown': inLeaf(many(1, (i) => `  wdth${i} 2 m\n`)),
  'leaf: accepts': inLeaf(many(1, (i) => `  accept leaf-without-${i} because "worn" by "KL" until 2027-03-31\n`)),
  'panel: wires to unknown devices': inPanel(many(1, (i) => `  wire nobody-${i} to T1 T0\n`)),
  'panel: wires to unknown terminals': inPanel(many(1, (i) => `  wire west-edge to Z${i} E0\n`)),
  'panel: wires of one device': inPanel(many(1, () => '  wire west-edge to E2 E0\n')),
  'panel: supply wires of one device': inPanel(many(1, () => '  wire fobs supply to V1 V0\n')),
  'panel: links': inPanel(many(1, () => '  link G1 G0\n')),
  'panel: links unknown': inPanel(many(1, (i) => `  link Z${i} Y${i}\n`)),
  'panel: selects': inPanel(many(1, () => '  select reply steps\n')),
  'panel: selects unknown': inPanel(many(1, (i) => `  select nothing-${i} steps\n`)),
  'panel: registered': inPanel(many(1, () => '  registered west-edge\n')),
  'panel: registered unknown': inPanel(many(1, (i) => `  registered nobody-${i}\n`)),
  'panel: accessories': inPanel(many(1, (i) => `  accessory "lamp ${i}" draws 1 mA from V1\n`)),
  'panel: capacities': inPanel(
    (lines) => `  battery {\n    voltage 24 V\n${many(1, (i) => `    capacity ${5 + (i % 9)} Ah over ${1 + (i % 30)} h\n`)(lines)}  }\n`,
  ),
  'motion: orders': inMotion(many(1, () => '  order opening west east\n')),
  'motion: lags': inMotion(many(1, () => '  lag opening 3 s\n')),
  'measured: forces on one leaf': behind(
    (lines) =>
      `measured {\n  on 2026-05-14\n  by "KL"\n${many(1, (i) => `  force west closing gap ${50 + (i % 900)} mm height ${300 + (i % 7) * 100} mm peak 310 N after-750-ms 96 N after-5-s 12 N\n`)(lines)}}\n`,
  ),
  'measured: forces on unknown leaves': behind(
    (lines) =>
      `measured {\n  on 2026-05-14\n${many(1, (i) => `  force nobody-${i} closing gap 300 mm height 900 mm peak 310 N after-750-ms 96 N after-5-s 12 N\n`)(lines)}}\n`,
  ),
  'function: subsystems': inFunction(many(3, (i) => `  subsystem part-${i} {\n    category 3\n  }\n`)),
  'function: elements': inFunction(
    (lines) =>
      `  subsystem relay "Relay" {\n    category 3\n${many(1, (i) => `    component "contactor K${i}" b10d 1300000 coverage 90 %\n`)(lines)}  }\n`,
  ),
  'panel model: terminals': inModel(
    (lines) => `  terminal S0 common\n${many(1, (i) => `  terminal S${i + 1} safety-input normally-closed common S0\n`)(lines)}`,
  ),
  'panel model: commons unknown': inModel(many(1, (i) => `  terminal S${i} safety-input normally-closed common U${i}\n`)),
  'panel model: terminals said again': inModel(many(1, () => '  terminal S0 common\n')),
  'panel model: outputs': inModel(
    (lines) => many(2, (i) => `  terminal V${i} supply-out\n`)(lines) + many(2, (i) => `  output V${i} gives 0.5 A at 24 V\n`)(lines),
  ),
  'panel model: windows': inModel(
    (lines) =>
      many(3, (i) => `  terminal E${i} edge-input\n`)(lines) +
      many(3, (i) => `  window E${i} 6.5 kohm .. 10.5 kohm\n  measures E${i} over 8.2 kohm ± 1 % at 5 V\n`)(lines),
  ),
  'panel model: selectors': inModel(many(4, (i) => `  selector s${i} "One" {\n    option a "a"\n    option b "b"\n  }\n`)),
  'panel model: options': inModel((lines) => `  selector s "One" {\n${many(1, (i) => `    option o${i} "o"\n`)(lines)}  }\n`),
  'panel model: adjusters': inModel(
    many(5, (i) => `  adjuster a${i} "Time" {\n    sets dwell\n    range 2 s .. 120 s\n    sweep 270 deg\n  }\n`),
  ),
  'panel model: indicators': inModel(many(3, (i) => `  indicator I${i} "edge" {\n    shows steady "at rest"\n  }\n`)),
  'panel of many inputs, wired': large(
    (i) => `  terminal S${i} safety-input normally-closed common C0\n`,
    (i) => `  wire west-edge to S${i} C0\n`,
  ),
  'panel of many inputs, linked': large(
    (i) => `  terminal S${i} safety-input normally-closed common C0\n`,
    (i) => `  link S${i} C0\n`,
  ),
  'panel of many inputs, links chained': large(
    (i) => `  terminal S${i} safety-input normally-closed common C0\n`,
    (i) => `  link S${i} S${i + 1}\n`,
  ),
  'panel of many outputs, loaded': large(
    (i) => `  terminal V${i} supply-out\n  output V${i} gives 0.5 A at 24 V\n`,
    (i) => `  accessory "lamp ${i}" draws 1 mA from V${i}\n`,
  ),
  'panel of many edge inputs, wired': (lines) => {
    const count = Math.floor(lines / 8);
    return (
      `${head}panel-model large "Large" {\n  supply 230 V\n  leaves 2\n  terminal C0 common\n` +
      times(count, (i) => `  terminal E${i} edge-input common C0\n  window E${i} 6.5 kohm .. 10.5 kohm\n`) +
      `}\n${pair}${times(count, (i) => edge(`edge-${i}`, '  on west closing-edge\n  terminator 8.2 kohm\n'))}panel main : large {\n` +
      `${times(count, (i) => `  wire edge-${i} to E${i} C0\n`)}}\n${motion()}`
    );
  },

  // Long lists in a line.
  'list: parts of a function': behind(
    (lines) => `function stop "Stops" {\n  required-level c\n  parts${list(() => 'west-edge')(lines)}\n}\n`,
  ),
  'list: parts unknown': behind((lines) => `function stop "Stops" {\n  required-level c\n  parts${list((i) => `nobody-${i}`)(lines)}\n}\n`),
  'list: ends of a wire': inPanel((lines) => `  wire west-edge to${list(() => 'E1')(lines)}\n`),
  'list: ends of a wire unknown': inPanel((lines) => `  wire west-edge to${list((i) => `Z${i}`)(lines)}\n`),
  'list: ends of a link': inPanel((lines) => `  link${list(() => 'G1')(lines)}\n`),
  'list: registered': inPanel((lines) => `  registered${list(() => 'west-edge')(lines)}\n`),
  'list: order': inMotion((lines) => `  order opening${list((i) => (i % 2 === 0 ? 'west' : 'east'))(lines)}\n`),
  'list: movements watched': behind(
    (lines) => `sensor beam : finch-beam {\n  watches${list((i) => (i % 2 === 0 ? 'closing' : 'opening'))(lines)}\n}\n`,
  ),
  'list: peaks': behind(
    (lines) =>
      `measured {\n  on 2026-05-14\n  force west closing gap 300 mm height 900 mm peak${list(() => '310 N')(lines)} after-750-ms 96 N after-5-s 12 N\n}\n`,
  ),
  'list: terminals of an output': inModel((lines) => `  terminal V1 supply-out\n  output${list(() => 'V1')(lines)} gives 0.5 A at 24 V\n`),
  'one line of unknown words': (lines) => `${gate}${list((i) => `what-${i}`)(lines)}\n`,

  // Names that are wrong, findings, places related to one another.
  'names unknown': behind(many(5, (i) => ram(`ram-${i}`, `nobody-${i}`))),
  'names misspelt': behind(many(10, (i) => swing(`leaf-${i}`) + ram(`ram-${i}`, `laef-${i}`))),
  'models misspelt': behind(
    many(8, (i) => `sensor-model beam-${i} "Beam" {\n  kind beam\n  output relay\n}\nsensor it-${i} : baem-${i} {\n  watches closing\n}\n`),
  ),
  'models unknown': behind(many(4, (i) => `sensor beam-${i} : nothing-${i} {\n  watches closing\n  height 200 mm\n}\n`)),
  'names said again': behind(many(6, () => swing('twice'))),
  'models said again': behind(many(4, () => 'cable-model twice "Cable" {\n  area 0.75 mm2\n  class 5\n}\n')),
  'accepts that match': behind((lines) =>
    many(7, (i) => swing(`leaf-${i}`, '  accept leaf-without-drive because "new" by "KL" until 2027-03-31\n'))(lines),
  ),
  'accepts outside': behind(many(1, () => 'accept seat-outside-practice because "worn stops" by "KL" until 2027-03-31\n')),
  'accepts of unknown rules': behind(many(1, (i) => `accept no-such-rule-${i} because "worn stops" by "KL" until 2027-03-31\n`)),
  expects: behind(many(1, () => 'expects protection-untested\n')),
  'expects-no': behind(many(1, () => 'expects-no error\n')),
  'numbers without units': behind(many(6, (i) => `leaf leaf-${i} {\n  width 2\n  height 1\n  mass 3\n  opens inward 95\n}\n`)),
  'braces lost': behind(many(5, (i) => `leaf leaf-${i} {\n  width 2.10 m\n  height 1.80 m\n  mass 165 kg\n  opens inward 95 deg\n`)),
  'braces too many': behind(many(2, () => '}\n\n')),
  'signs that mean nothing': behind(many(1, () => '@@ $$ !! ~~\n')),
  'words outside': behind(many(1, (i) => `wdth-${i} 2 m\n`)),
  'strings without an end': behind(many(1, () => '"open\n')),
  comments: behind(many(1, (i) => `# what is said ${i}\n`)),
  'empty lines': behind(many(1, () => '\n')),
  tabs: behind(many(6, (i) => swing(`leaf-${i}`).replaceAll('  ', '\t'))),
  'carriage returns': (lines) => behind(many(6, (i) => swing(`leaf-${i}`)))(lines).replaceAll('\n', '\r\n'),
};

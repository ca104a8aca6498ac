import { type BlockOfFile, choice, quantity, ref, text } from '../spec.ts';
import { fitted } from './shared.ts';

export const block = {
  doc: 'The control panel: what is wired to its terminals and how it is set.',
  place: 60,
  belongs: 'site',
  named: true,
  model: 'panel-model',
  example: 'panel main : MODEL {\n  wire lower-beam to B1 B2\n  link S1 S2\n}',
  lines: {
    wire: {
      safety: true,
      doc: 'A device and the terminals that it is wired to.',
      many: true,
      example: 'wire lower-beam to B1 B2',
      slots: {
        device: ref('device', { doc: 'A sensor, drive or control.' }),
        part: choice(
          {
            signal: 'its output or contact; meant where nothing is said',
            supply: 'its supply',
            test: 'its test input',
          },
          { doc: 'Which of its connections.', optional: true },
        ),
        to: ref('terminal', { doc: 'Terminals of this panel.', after: 'to', many: true }),
        series: ref('device', {
          doc: 'A device on the same input whose contact lies in series with this one. Not stated means side by side, in parallel.',
          after: 'in-series-with',
          optional: true,
        }),
      },
    },
    link: {
      safety: true,
      doc: 'A wire link between two terminals, as an unused normally-closed input needs one to its common.',
      many: true,
      example: 'link S1 S2',
      slots: { terminals: ref('terminal', { doc: 'The two terminals.', many: true }) },
    },
    select: {
      safety: true,
      doc: 'The position of a selector.',
      many: true,
      example: 'select reply closes-alone',
      slots: { selector: ref('selector', { doc: 'The selector.' }), option: ref('option', { doc: 'Its position.' }) },
    },
    registered: {
      safety: true,
      doc: 'Sensors that the panel has learnt; a panel that learns its sensors does not heed one that it has not.',
      many: true,
      example: 'registered lower-beam west-edge',
      slots: { sensors: ref('sensor', { doc: 'The sensors.', many: true }) },
    },
    isolator: {
      doc: 'Where the mains of this panel is cut off, on all live conductors and so that nobody else can switch it on again.',
      example: 'isolator "beside the panel, two poles, takes a padlock"',
      slots: { place: text({ doc: 'Where it is and what it is.' }) },
    },
    accessory: {
      doc: 'Something else that the panel feeds, such as a receiver or a lamp.',
      many: true,
      example: 'accessory "radio receiver" draws 30 mA from V1',
      slots: {
        what: text({ doc: 'What it is.' }),
        current: quantity('current', 0, 50, { doc: 'The current that it draws.', after: 'draws' }),
        from: ref('terminal', { doc: 'The output that feeds it.', after: 'from' }),
      },
    },
    fitted,
  },
  blocks: {
    battery: {
      doc: 'The battery that keeps this panel going when there is no mains, or that a solar panel charges.',
      named: false,
      single: true,
      example: 'battery {\n  voltage 24 V\n  capacity 7 Ah over 20 h\n  discharge 50 %\n  lasts 24 h\n}',
      lines: {
        voltage: {
          doc: 'Nominal voltage of the whole battery.',
          required: true,
          example: 'voltage 24 V',
          slots: { value: quantity('voltage', 5, 120, { doc: 'Voltage.' }) },
        },
        capacity: {
          doc:
            'What it gives when it is emptied over so many hours, as its data sheet says. A second line with another time tells how ' +
            'much less it gives when it is emptied faster.',
          many: true,
          required: true,
          example: 'capacity 7 Ah over 20 h',
          source: 'Peukert’s law',
          slots: {
            charge: quantity('charge', 0.1 * 3600, 5000 * 3600, { doc: 'Capacity.' }),
            time: quantity('time', 0.1 * 3600, 200 * 3600, { doc: 'Time in which it is emptied.', after: 'over' }),
          },
        },
        discharge: {
          doc: 'Share of the capacity that may be used. Not stated means 50 %.',
          example: 'discharge 50 %',
          slots: { value: quantity('ratio', 0.05, 1, { doc: 'Share.', fallback: 0.5 }) },
        },
        lasts: {
          doc: 'How long it is to keep the gate going.',
          example: 'lasts 24 h',
          slots: { value: quantity('time', 60, 60 * 24 * 3600, { doc: 'Time.' }) },
        },
        cycles: {
          doc:
            'How many times a day the gate opens and closes while it runs from the battery. Not stated means as the site says; where ' +
            'that does not say either, only what is drawn at rest is reckoned.',
          example: 'cycles 30 /day',
          slots: { value: quantity('rate', 0, 100_000 / 86_400, { doc: 'Cycles a day.' }) },
        },
        coldest: {
          doc:
            'The coldest that the battery gets; in the cold it gives less. Not stated means 27 °C and above, at which it gives what ' +
            'its data sheet says.',
          example: 'coldest -5 °C',
          slots: { value: quantity('temperature', 223.15, 333.15, { doc: 'Temperature.' }) },
        },
      },
      blocks: {},
    },
    solar: {
      doc: 'The solar panel that charges the battery.',
      named: false,
      single: true,
      example: 'solar {\n  peak 60 W\n  sun 1.2 h\n  efficiency 75 %\n}',
      lines: {
        peak: {
          doc: 'Rated power of the solar panel.',
          required: true,
          example: 'peak 60 W',
          slots: { value: quantity('power', 0.5, 100_000, { doc: 'Power in full sun.' }) },
        },
        sun: {
          doc:
            'Peak sun hours a day in the worst month, for the way the panel faces; the same number as kWh a square metre and day. From ' +
            'a table for the place.',
          required: true,
          example: 'sun 1.2 h',
          slots: { value: quantity('time', 0.05 * 3600, 12 * 3600, { doc: 'Hours a day of full sun.' }) },
        },
        efficiency: {
          doc: 'What is left after the regulator, the wiring and the battery. Not stated means 75 %.',
          example: 'efficiency 75 %',
          slots: { value: quantity('ratio', 0.1, 1, { doc: 'Share.', fallback: 0.75 }) },
        },
      },
      blocks: {},
    },
  },
} as const satisfies BlockOfFile;

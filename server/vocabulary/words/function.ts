import { type BlockOfFile, choice, count, date, quantity, ref, text } from '../spec.ts';
import { requiredLevel, safetyLines, switchingOptions, year } from './shared.ts';

export const block = {
  doc:
    'A safety function: what must happen, by which parts, and how surely. Its parts are a chain: when one of them fails, the function ' +
    'fails.',
  place: 100,
  belongs: 'site',
  named: true,
  title: true,
  example: 'function closing-stop "Stops the closing when west-edge is pressed" {\n  required-level c\n  parts west-edge main\n}',
  lines: {
    'required-level': {
      ...requiredLevel,
      doc: 'The performance level that this function must reach, as the risk assessment says. Not stated means as the site says.',
    },
    risk: {
      safety: true,
      doc:
        'The risk as the graph of the standard asks for it; the level that follows is from memory. A required level that is stated ' +
        'goes before it.',
      example: 'risk serious seldom avoidable',
      source: 'EN ISO 13849-1, Annex A (from memory)',
      slots: {
        severity: choice(
          { slight: 'a slight injury, which heals (S1)', serious: 'a serious injury, or death (S2)' },
          { doc: 'How badly somebody can be hurt.' },
        ),
        exposure: choice(
          { seldom: 'seldom, or for a short time (F1)', often: 'often, or for a long time (F2)' },
          { doc: 'How often somebody is there.' },
        ),
        avoidance: choice(
          { avoidable: 'it can be avoided under some conditions (P1)', unavoidable: 'it can hardly be avoided (P2)' },
          { doc: 'Whether whoever is there can get out of the way.' },
        ),
      },
    },
    parts: {
      safety: true,
      doc:
        'The devices that the function runs through, from the one that senses to the one that stops; each is reckoned by what its ' +
        'model declares.',
      example: 'parts west-edge main',
      slots: { parts: ref('load', { doc: 'Sensors, drives and panels.', many: true }) },
    },
  },
  blocks: {
    subsystem: {
      doc: 'A part of the function that is put together here from single parts, in one channel or two.',
      named: true,
      example:
        'subsystem cut-off {\n  category 3\n  common-cause 75\n  component "contactor K1" b10d 1300000 coverage 90 %\n' +
        '  component "contactor K2" channel second b10d 1300000 coverage 90 %\n}',
      lines: {
        category: {
          safety: true,
          doc: 'The category that it is built to, 1 to 4. Not stated means B: nothing is claimed.',
          example: 'category 3',
          source: 'EN ISO 13849-1',
          slots: { value: count(1, 4, { doc: 'The category.' }) },
        },
        'common-cause': safetyLines['common-cause'],
        tests: {
          safety: true,
          doc:
            'How many tests come on each demand of the function, at the least. Category 2 asks for 100, or for a test at each demand; ' +
            'where nothing is stated the test does not count.',
          example: 'tests 100',
          source: 'EN ISO 13849-1 (the numbers from memory)',
          slots: { value: count(1, 1_000_000, { doc: 'Tests for each demand.' }) },
        },
        'tested-on-demand': {
          safety: true,
          doc: 'The test is made at each demand, and the gate is brought to rest before anybody is hurt.',
          example: 'tested-on-demand',
          source: 'EN ISO 13849-1',
          slots: {},
        },
        component: {
          safety: true,
          doc: 'One part: its channel, and what its maker declares of it.',
          formerly: ['element'],
          many: true,
          required: true,
          example: 'component "contactor K1" b10d 1300000 coverage 90 % times 2',
          source: 'EN ISO 13849-1, Annexes C and D',
          slots: {
            what: text({ doc: 'What it is.' }),
            channel: choice(
              {
                first: 'the first channel',
                second: 'the second channel, which does the same',
                test: 'what tests the first channel (category 2)',
              },
              { doc: 'Its channel. Not stated means the first.', after: 'channel', optional: true, fallback: 'first' },
            ),
            b10d: count(100, 1e10, {
              doc: 'Number of operations until a tenth of such parts have failed dangerously.',
              after: 'b10d',
              optional: true,
            }),
            mttfd: quantity('time', 0.1 * year, 100_000 * year, {
              doc: 'Mean time to a dangerous failure.',
              after: 'mttfd',
              optional: true,
            }),
            kind: choice(
              {
                ...switchingOptions,
                'position-switch': 'a position switch whose contact is opened by force',
                'interlock-switch': 'a position switch with a separate actuator',
                'emergency-stop': 'an emergency stop button',
                'push-button': 'a push button',
                mechanical: 'a mechanical part',
              },
              {
                doc: 'What kind of part it is, where its maker declares no number: one known from memory is then reckoned with.',
                after: 'kind',
                optional: true,
              },
            ),
            coverage: quantity('ratio', 0, 1, {
              doc: 'Share of its dangerous failures that are found. Not stated means none.',
              after: 'coverage',
              optional: true,
              fallback: 0,
            }),
            times: count(1, 100, {
              doc: 'How many times it operates in each cycle of the gate. Not stated means once.',
              after: 'times',
              optional: true,
              fallback: 1,
            }),
            fitted: date({
              doc: 'The day on which it was fitted, where it took the place of an earlier one.',
              after: 'fitted',
              optional: true,
            }),
          },
        },
      },
      blocks: {},
    },
  },
} as const satisfies BlockOfFile;

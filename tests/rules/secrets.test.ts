import { describe, expect, test } from 'vitest';
import { secretsIn, secretsOf } from '../../server/rules/secret-in-file/secrets.ts';
import { judge } from '../kit/pages.ts';

const kinds = (text: string): string[] => secretsIn(text).map((secret) => secret.kind);

describe('what gives something away', () => {
  test.each([
    ['# pin 4711', 'code'],
    ['# PIN: 4711', 'code'],
    ['# the PIN is 47 11', 'code'],
    ['# keypad code 80231', 'code'],
    ['# entrance code is now 8023', 'code'],
    ['# code for the gate: 1-2-3-4', 'code'],
    ['  pin 2580', 'code'],
    ['  pin "heron"', 'code'],
    ['  serial-code 99812', 'code'],
    ['# "installer code 0000"', 'code'],
    ['# pin-code=4711', 'code'],
    ['# transmitter serial 00A4F291', 'code'],
    ['# fob id 123456', 'code'],
    ['# Code: "47a11"', 'code'],
    ['# password: heron', 'password'],
    ['# password is heron7', 'password'],
    ['password "heron"', 'password'],
    ['# Passwort: Reiher', 'password'],
    ['# passcode 4711', 'password'],
    ['# wifi-key=herons', 'password'],
    ['# +99 555 0100 123', 'telephone'],
    ['# +99 (0)555 010 0123', 'telephone'],
    ['# ring +995550100123 first', 'telephone'],
    ['# 0555 010 0199', 'telephone'],
    ['# (0555) 0100-199', 'telephone'],
    ['# 05550100199', 'telephone'],
    ['# 05.55.01.00.19', 'telephone'],
    ['# 555-010-0199', 'telephone'],
    ['# (555) 210-0199', 'telephone'],
    ['# call the caretaker on 5550100', 'telephone'],
    ['# tel. 555 0100', 'telephone'],
    ['site "Yard, phone 555 0100" {', 'telephone'],
  ])('%s', (text, kind) => {
    expect(kinds(text)).toEqual([kind]);
    const analysis = judge(`language 1\nleaf west {\n${text}\n}\n`);
    expect(secretsOf(analysis.installation.reading).map((secret) => secret.kind)).toEqual([kind]);
  });
});

describe('what gives nothing away', () => {
  test.each([
    'width 2100 mm',
    'post-bracket 140 mm by 120 mm',
    'range 2 s .. 120 s',
    'terminator 8200 ohm ± 5 %',
    'measured 2026-05-14 by "KL"',
    '# seen on 2026-05-14 and 2026-06-02',
    '# 14.05.2026 to 02.06.2026',
    '# 14-05-2026',
    '# open 08.00-12.30 13.00-17.00',
    '# peaks 310 296 312 305 298 N',
    '# 780 120 1400',
    '# 1000-2000, 2000-3000',
    '# -0.25 0.75 1.25 10.5',
    '# +5 -10 +15 -20 +25 -30',
    '# angles 0 10 20 30 40 50 60 70 80 90',
    '# EN 12453:2000, EN 60335-2-103:2015, IEC 60364-5-52',
    '# EN ISO 13849-1:2023',
    '# fault code 1204',
    '# error code: 12345',
    '# post code 55012',
    '# building code 2018',
    '# code of practice 2019',
    '# colour code "1234"',
    '# hinge pin 1840',
    '# pin 20 mm',
    '# pin to pin 3800 mm',
    '# pins of 12 and 16',
    '# "code" is a word',
    '# the code "closes-alone" means',
    '# password: none',
    '# password: ask KL',
    '# the password is kept in the safe',
    '# keypad code: see the safe',
    '# keypad without password',
    '# remote closing 2000 times',
    '# drive serial number 20194711',
    '# call 3 of 5',
    '# tell 1234567',
    '# mobile home 12000 mm wide',
    '# order 4500012345',
    '# 12 345 678 cycles',
    '# site at 51.477222, -0.001389',
    'by transmitter',
    'class 5',
    'shows blinking "a registered sensor does not answer"',
    'use "../library/0711/panels.gate"',
    '# 2.10 m by 1.80 m, 165 kg, 24 V',
    '# revision 2026.05.14.001',
    '# 192.168.100.200',
  ])('%s', (text) => {
    expect(secretsIn(text)).toEqual([]);
    expect(secretsOf(judge(`language 1\nleaf west {\n${text}\n}\n`).installation.reading)).toEqual([]);
  });
});

test('a finding does not repeat what it found, nor does any other finding of that line', () => {
  const analysis = judge(
    'language 1\nmotion {\n  seat 4711 code 4711\n  dwell "pin 4711" # pin 4711\n}\npin 4711\ncontrol gatepad {\n  by keypad pin 4711\n}\n',
  );
  expect(analysis.findings.filter((finding) => finding.rule === 'secret-in-file').length).toBe(5);
  for (const finding of analysis.findings)
    for (const sentence of [finding.what, finding.why, finding.remedy, ...finding.related.map((one) => one.message)])
      if (finding.rule !== 'unit-missing') expect(sentence).not.toContain('4711');
});

test('long texts without end are searched in linear time', () => {
  for (const piece of [
    'pin ',
    '1 ',
    '0 1',
    '0((',
    '+1',
    'code: ',
    'password ',
    'tel ab cd ',
    '(0',
    'fob serial ',
    '1-',
    'code is the ',
    '"',
  ])
    expect(secretsIn(piece.repeat(40_000)).length).toBeLessThanOrEqual(50);
});

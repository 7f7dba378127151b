import { describe, expect, it } from 'vitest';
import { listCautions } from '#app/listCautions.ts';
import type { ExampleFiles } from '#checks/defineCheck.ts';
import { judge } from '#checks/judge.ts';
import { checks } from '#checks/registry.ts';
import { tinyPng } from '#checks/tinyPng.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openWorld } from '#outside/openWorld.ts';
import { judgedFrom } from '../checks/judgedFrom.ts';

const guide = `# Leselampe Halbmond

Eine kleine Lampe für das Regal, die mit einem Tastendruck heller und dunkler wird. Sie läuft mit einem Netzteil
von der Steckdose und ist an einem Nachmittag gebaut.

## Bauteile einlöten

- Teile: R1, C1, D1
- Werkzeug: Lötkolben
- Verbindet: R1.2 – D1.A
- Vorsicht: Die Spitze ist 350 °C heiß und verbrennt die Haut. Nur am Griff anfassen.

Stecke den Widerstand R1 (330 Ω) und den Kondensator in die Platine und löte sie von unten an. Danach kommt die
Leuchtdiode: Das lange Bein zeigt zum Widerstand. Schneide alle überstehenden Drähte mit dem Seitenschneider ab.

![Die Platine mit allen Bauteilen](bilder/platine.png)

## Taster und Steuerung anschließen

- Teile: S1, U1
- Verbindet: U1.D5 – R1.1, U1.D2 – S1.1, S1.2 – U1.GND, D1.K – U1.GND, C1.1 – U1.5V
- Strom: aus

Löte den Taster an die Steuerung und prüfe, ob kein Draht den anderen berührt.

## Programm aufspielen und prüfen

- Programm: lampe.ino auf U1
- Strom: an

Schließe die Steuerung an den Rechner an und übertrage das Programm. Drücke den Taster: Die Lampe wird heller.

## Gehäuse schließen

- Strom: aus

Ziehe den Stecker und klebe den Deckel auf. Lass den Kleber trocknen, bevor du die Lampe auf das Regal stellst.

Text und Schaltung stehen unter der Lizenz CC-BY-4.0.
`;

const files: ExampleFiles = {
  'guide.md': guide,
  'parts.csv':
    'Reference,Quantity,Description,Value\nR1,1,Widerstand,330 Ω\nC1,1,Kondensator,100 nF\nD1,1,Leuchtdiode weiß,\nS1,1,Taster,\nU1,1,Arduino Nano ATmega328P,\n',
  'tools.csv': 'tool,needed\nLötkolben,yes\nSeitenschneider,yes\nKlebepistole,yes\n',
  'wiring.csv': 'from,to,net\nU1.D5,R1.1,\nR1.2,D1.A,\nD1.K,U1.GND,\nC1.1,U1.5V,\nU1.D2,S1.1,\nS1.2,U1.GND,\n',
  'lampe.ino':
    'const int LAMP_PIN = 5;\nconst int BUTTON_PIN = 2;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); pinMode(BUTTON_PIN, INPUT_PULLUP); }\nvoid loop() { analogWrite(LAMP_PIN, 80); digitalRead(BUTTON_PIN); }\n',
  'bilder/platine.png': tinyPng,
};

const readsWords = new Set(checks.filter(({ words }) => words === 'English').map(({ id }) => id));

describe('a guide in German', () => {
  it('has no finding from English words, and each such check says why it cannot tell', async () => {
    const { findings, ran } = judge(await judgedFrom(files), { for: 'publisher' });
    expect(findings.map(({ check, message }) => `${check}: ${message}`)).toEqual([]);
    const silent = ran.filter(({ check }) => readsWords.has(check));
    const asked = silent.filter(({ outcome }) => outcome !== 'does-not-apply');
    expect(asked.length).toBeGreaterThan(30);
    expect(new Set(asked.map(({ outcome, why }) => `${outcome}: ${why}`))).toEqual(
      new Set(['cannot-tell: the guide is in German; this check reads English words']),
    );
  });
  it('still has its contradictions found: a value, a pin, a picture', async () => {
    const faulty = {
      ...files,
      'guide.md': guide.replace('R1 (330 Ω)', 'R1 (470 Ω)').replace('bilder/platine.png', 'bilder/patine.png'),
      'wiring.csv': String(files['wiring.csv']).replace('U1.D5,R1.1', 'U1.D6,R1.1'),
    };
    const found = new Set(judge(await judgedFrom(faulty)).findings.map(({ check }) => check));
    expect([...found]).toEqual(expect.arrayContaining(['value-differs', 'pin-differs', 'picture-missing']));
    expect([...found].filter((check) => readsWords.has(check))).toEqual([]);
  });
  it('has nothing read from its words by English ones; references still speak', async () => {
    const { facts } = await judgedFrom({ ...files, 'guide.md': guide.replace('- Teile: R1, C1, D1\n', '') });
    expect(facts.language).toEqual({ code: 'de', known: 'read' });
    expect([facts.actions, facts.hazards, facts.terms, facts.temporaries, facts.openWaits]).toEqual([
      [],
      [],
      [],
      [],
      [],
    ]);
    expect(facts.proposals.map(({ label, item }) => `${label} ${item}`)).toEqual(['parts R1']);
  });
  it('counts as English where the settings state so', async () => {
    const { facts } = await judgedFrom({ ...files, 'twicebuilt.yaml': 'format: 1\nlanguage: en\n' });
    expect(facts.language).toEqual({ code: 'en', known: 'stated' });
  });
});

describe('the cautions of a guide in German', () => {
  const listingOf = (more: ExampleFiles) => listCautions(memoryFolder({ ...files, ...more }), openWorld());
  it('cannot be told, and are never said to be none', async () => {
    const { hazards, note } = await listingOf({});
    expect(hazards).toEqual([]);
    expect(note).toMatch(/^The guide is in German, .* cannot be told\./);
    expect(note).not.toContain('No listed hazard');
  });
  it('name what is grave by the list alone, without a word on whether the guide warns of it', async () => {
    const row = 'BT1,1,Lithium-ion cell 18650 3.7 V 2600 mAh,\n';
    const { hazards, note } = await listingOf({ 'parts.csv': `${String(files['parts.csv'])}${row}` });
    expect(hazards.map(({ hazard, cover, cautions }) => [hazard, cover, cautions])).toEqual([
      ['lithium', 'cannot-tell', []],
    ]);
    expect(note).toMatch(/^The guide is in German/);
  });
});

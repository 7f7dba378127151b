import { describe, expect, it } from 'vitest';
import type { Settings } from '#core/settings.ts';
import { at, smallBuild } from '../../../tests/checks/smallBuild.ts';
import { languageOf, otherLanguage } from './languageOf.ts';

const guideOf = (prose: string, settings: Partial<Settings> = {}) => {
  const { build } = smallBuild({ steps: [{ id: 'one', prose }] });
  return { ...build, settings: { ...build.settings, ...settings } };
};

const german = `Löte den Level Shifter und das Step-Down Board auf die Lochrasterplatine. Achte beim Micro-USB Breakout
darauf, dass die Pins nicht kurzgeschlossen sind. Der Rotary Encoder kommt in das Panel, der LED Strip wird mit dem
Heat Gun und etwas Shrink Tube befestigt. Dann das Dev Board mit der Arduino IDE und dem Serial Monitor testen.`;

const english = `Drive from Plaza de la Luna to El Molino de las Flores and mount the sensor on the wall of the Casa del
Reloj. The cable is run along Calle de los Olivos. Solder the header to the board, and check that no pins are bridged
before you close the lid. The sensor sends its reading to the station at Puerto del Viento.`;

const spanish = `Suelda la resistencia a la placa y comprueba que no hay puentes entre las patillas. El cable rojo va al
borne positivo y el negro al negativo. Cuando la luz se encienda, cierra la tapa con los cuatro tornillos y coloca el
conjunto sobre la mesa, para que los sensores tengan aire por todos los lados.`;

const dutch = `Soldeer de weerstand op de printplaat en controleer of er geen sluiting is tussen de pootjes. De rode draad
gaat naar de plus en de zwarte naar de min. Als het lampje brandt, dan is alles goed en kan het deksel met vier
schroeven worden gesloten. Leg het geheel daarna een uur weg om te drogen.`;

const polish = `Przylutuj rezystor do płytki i sprawdź, czy nie ma zwarcia między nóżkami. Czerwony przewód idzie do plusa,
a czarny do minusa. Gdy lampka się zaświeci, to wszystko jest w porządku i można zamknąć pokrywę na cztery śruby.
Następnie odłóż całość na godzinę, aby klej wysechł, oraz sprawdź jeszcze raz, czy nic się nie rusza.`;

const terse = `Fit R1, R2 and R3. Solder. Trim leads. Fit U1: notch up. Solder pins 1 and 8 first, then all others. Fit J1.
Check for bridges. Load firmware. Connect USB. LED D1 lights. Close lid. Screws M3 × 8, four pieces. Label case. Done.
Store spare fuse in lid.`;

const russian = `Припаяйте резистор к плате и проверьте, что между выводами нет замыкания. Красный провод идёт к плюсу, а
чёрный к минусу. Когда лампа загорится, закройте крышку четырьмя винтами.`;

describe('the language of a guide', () => {
  it.each([
    ['a German guide full of English part names', german, 'de'],
    ['an English guide full of Spanish place names', english, 'en'],
    ['a terse English guide', terse, 'en'],
    ['a Spanish guide', spanish, 'es'],
    ['a Dutch guide', dutch, 'nl'],
    ['a Polish guide', polish, 'pl'],
    ['a guide in letters other than Latin', russian, 'und-Cyrl'],
  ])('is told from the words: %s', (_, prose, code) => {
    expect(languageOf(guideOf(prose))).toEqual({ code, known: 'read' });
  });
  it.each([
    ['no prose but facts', ''],
    ['a few words', 'Löte den Widerstand und die Diode ein. Dann den Deckel mit dem Rahmen verschrauben.'],
    ['names alone', 'Alba Corvo Delta Echo Foxtrot '.repeat(10)],
    ['half and half', `${german}\n${english}`],
  ])('is not known of %s', (_, prose) => {
    expect(languageOf(guideOf(prose))).toEqual({ code: null, known: 'unknown' });
  });
  it('is what the settings state, and not what they hold where they say nothing', () => {
    const places = { language: at('twicebuilt.yaml', 2, 'language: fr') };
    expect(languageOf(guideOf(german, { language: 'fr', places }))).toEqual({ code: 'fr', known: 'stated' });
    expect(languageOf(guideOf(german, { language: 'en' })).code).toBe('de');
  });
  it('is named where it is another than English', () => {
    const named = ['de', 'de-AT', 'pt_BR', 'ja', 'und-Cyrl', 'eo', 'en', 'en-GB', 'English', null].map((code) =>
      otherLanguage({ code, known: 'stated' }),
    );
    expect(named).toEqual([
      'German',
      'German',
      'Portuguese',
      'Japanese',
      'a language in Cyrillic letters',
      '‘eo’',
      null,
      null,
      null,
      null,
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { isCredential, isPlaceholder, secretKindOf } from './judgeCredential.ts';

describe('isPlaceholder', () => {
  it.each([
    '',
    'your-ssid',
    'YOUR_WIFI_PASSWORD',
    'yourpassword',
    'Your Network Name',
    'my-ssid',
    'myPassword',
    'my_wifi_password',
    'the-password',
    'changeme',
    'change_me',
    'CHANGE-THIS-PASSWORD',
    'replace me',
    'REPLACE_ME',
    'insert password here',
    'insert_your_token_here',
    'enter your key',
    'put-your-token-here',
    'TOKEN_GOES_HERE',
    'ssid here',
    'xxxx',
    'XXXX-XXXX-XXXX',
    'xxx.xxx',
    '********',
    '••••',
    '00000000',
    '...',
    '<password>',
    '[ssid]',
    '{{token}}',
    `\${WIFI_PASS}`,
    '$WIFI_PASS',
    '__PASSWORD__',
    'secret',
    'password',
    'Password1',
    'wifi-password',
    'ssid',
    'network name',
    'example',
    'example-password',
    'test123',
    'dummy_key',
    'default',
    '12345678',
    'TODO',
    'n/a',
    'WITHHELD',
    'me@example.com',
    'https://example.org/hook',
    'password'.repeat(8),
  ])('%s stands for a credential', (text) => {
    expect(isPlaceholder(text)).toBe(true);
  });

  it.each([
    'Kelp-on-7-rocks',
    'antelope',
    'mystic-river',
    'atmosphere',
    'settlement9',
    'themselves',
    'addisababa',
    'yourbench7lamp',
    'writers-block-4',
    'testament-of-7',
    '$ecretLamp',
    'hunter2',
    'q8Zr!t2m',
    'LowTideBench',
    'correct horse battery staple',
    'a1b2c3d4e5f6',
    '2001-moonrise',
  ])('%s could be a real one', (text) => {
    expect(isPlaceholder(text)).toBe(false);
  });

  it('answers at once for long repetitions of its own words', () => {
    const before = performance.now();
    expect(isPlaceholder(`${'password'.repeat(400)}!`)).toBe(false);
    expect(isPlaceholder(`${'password'.repeat(7)}!?`)).toBe(false);
    expect(performance.now() - before).toBeLessThan(500);
  });
});

describe('secretKindOf', () => {
  it.each([
    ['ssid', 'wifi-name'],
    ['WIFI_SSID', 'wifi-name'],
    ['ssid2', 'wifi-name'],
    ['ssid_home', 'wifi-name'],
    ['password_wifi', 'wifi-password'],
    ['passwordDefault', 'password'],
    ['wifiPassword', 'wifi-password'],
    ['WIFI_PASS', 'wifi-password'],
    ['wpa_psk', 'wifi-password'],
    ['AP_PASSWORD', 'wifi-password'],
    ['password', 'password'],
    ['mqtt_password', 'password'],
    ['MQTT_PASS', 'password'],
    ['botToken', 'token'],
    ['USER_TOKEN', 'token'],
    ['auth', 'token'],
    ['BLYNK_AUTH_TOKEN', 'token'],
    ['apiKey', 'key'],
    ['API_KEY', 'key'],
    ['clientSecret', 'key'],
    ['privateKey', 'key'],
    ['APPSKEY', 'key'],
  ])('%s promises a %s', (name, kind) => {
    expect(secretKindOf(name)).toBe(kind);
  });

  it.each([
    'compass',
    'passwordBasedMac',
    'singlePassScheme',
    'passes',
    'bypassMode',
    'passwordField',
    'passwordLength',
    'ssidLabel',
    'tokenUrl',
    'keyPin',
    'keyboard',
    'monkey',
    'KEY_UP',
    'authMode',
    'secretary',
  ])('%s promises none', (name) => {
    expect(secretKindOf(name)).toBeNull();
  });
});

describe('isCredential', () => {
  it('wants a token or key to be long and in one piece', () => {
    expect(isCredential('a81f92bc03de', 'token')).toBe(true);
    expect(isCredential(',', 'token')).toBe(false);
    expect(isCredential('two words here7', 'key')).toBe(false);
    expect(isCredential('/v1/token.json', 'token')).toBe(false);
    expect(isCredential('data/token-v1.json', 'token')).toBe(false);
    expect(isCredential('q8Zr/abc123DEF456gh', 'key')).toBe(true);
  });

  it('holds a network name to 32 characters', () => {
    expect(isCredential(`${'L'.repeat(31)}k`, 'wifi-name')).toBe(true);
    expect(isCredential(`${'L'.repeat(32)}k`, 'wifi-name')).toBe(false);
  });

  it('takes words addressed to a reader, and patterns, for no password', () => {
    expect(isCredential('Enter the word:', 'password')).toBe(false);
    expect(isCredential('word-%d', 'password')).toBe(false);
    expect(isCredential('Kelp on 7 rocks', 'password')).toBe(true);
  });
});

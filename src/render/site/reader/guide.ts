// What the page of a guide does beyond showing it. Without it, everything can still be read, printed and followed.
import { keepOffline } from './keepOffline.ts';
import { searchTroubles } from './searchTroubles.ts';
import { openTicks, ownStorage } from './store.ts';
import { tickOff } from './tickOff.ts';
import { walk } from './walk.ts';
import { zoom } from './zoom.ts';

const ticks = openTicks(document.documentElement.dataset.guide ?? '', ownStorage(window));
tickOff(document, ticks);
searchTroubles(document);
zoom(document);
walk(window);
keepOffline(window);

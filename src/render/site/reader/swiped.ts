/** CSS pixels that a finger must travel sideways, and how much more than up or down. */
const shortest = 60;
const steepest = 0.5;

/** Calls `then` when a finger was drawn sideways, but not over what scrolls sideways itself. */
export function swiped(page: Document, then: (towards: 'left' | 'right') => void): void {
  let from: { x: number; y: number } | null = null;
  page.addEventListener(
    'touchstart',
    ({ touches, target }) => {
      const finger = touches.length === 1 ? touches[0] : undefined;
      const scrolls = target instanceof Element && target.closest('.scroll, pre, dialog') !== null;
      from = finger && !scrolls ? { x: finger.clientX, y: finger.clientY } : null;
    },
    { passive: true },
  );
  page.addEventListener(
    'touchend',
    ({ changedTouches }) => {
      const finger = changedTouches[0];
      if (from === null || finger === undefined) return;
      const towards = directionOf(finger.clientX - from.x, finger.clientY - from.y);
      from = null;
      if (towards !== null) then(towards);
    },
    { passive: true },
  );
}

/** Null for a tap, and for a way that goes up or down rather than sideways. */
export function directionOf(dx: number, dy: number): 'left' | 'right' | null {
  if (Math.abs(dx) < shortest || Math.abs(dy) > Math.abs(dx) * steepest) return null;
  return dx < 0 ? 'left' : 'right';
}

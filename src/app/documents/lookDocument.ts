import type { Look, Looking } from '../look.ts';

/** JSON output of `look`. */
export function lookDocument({ shots, leftOut }: Looking): Record<string, unknown> {
  return { format: 1, shots: shots.map(shotDocument), leftOut };
}

function shotDocument({ path, hash, kind, width, height, takenAt, camera, leaks, measures }: Look) {
  const { focus, exposure, cast, clutter, subject, board } = measures;
  return {
    path,
    hash,
    kind,
    width,
    height,
    takenAt,
    camera,
    position: leaks.position,
    focus: { score: focus.score, verdict: focus.verdict },
    exposure: {
      ev: exposure.ev,
      shadowsClipped: exposure.shadowsClipped,
      highlightsClipped: exposure.highlightsClipped,
      evenness: exposure.evenness,
      verdict: exposure.verdict,
    },
    cast: cast && { deltaE: cast.deltaE, gains: cast.gains, verdict: cast.verdict },
    clutter: { score: clutter.score, verdict: clutter.verdict },
    subject: { box: subject.box, confidence: subject.confidence },
    board: board && { corners: board.corners, confidence: board.confidence },
  };
}

const pitch = 2.54;

/** Of a perfboard, in millimetres. */
export const boardThickness = 1.6;

/** Parts that are on the board and wires that run on it once the step that `thing.board` names is done. */
export function boardAt(thing, board, stages) {
  const last = thing.board === 'bare' ? -1 : stages.findIndex((stage) => stage.step === thing.board);
  if (last < 0 && thing.board !== 'bare') throw new Error(`No step of the build is named '${thing.board}'.`);
  const reached = (step) => stages.findIndex((stage) => stage.step === step) <= last;
  return {
    parts: board.parts.filter((part) => reached(part.step) && !(thing.without ?? []).includes(part.ref)),
    wires: stages.slice(0, last + 1).flatMap((stage) => stage.wires),
  };
}

/** x and z of a hole, such as [18, 'P'], or of a spot between holes, such as [11.5, 16.5]; the middle of the board is 0. */
export function holeAt([column, row], board) {
  const line = typeof row === 'string' ? row.charCodeAt(0) - 64 : row;
  return [(column - (board.columns + 1) / 2) * pitch, ((board.rows + 1) / 2 - line) * pitch].map((v) =>
    Number(v.toFixed(3)),
  );
}

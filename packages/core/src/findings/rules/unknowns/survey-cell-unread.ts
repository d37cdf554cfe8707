import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const surveyCellUnread = defineRule(
  {
    code: "survey-cell-unread",
    asks: "Could every cell of the survey be read?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const minutes = minutesFor(index, "look", undefined);
    for (const circuit of index.record.circuits ?? []) {
      const subject = ofCircuit(index, circuit);
      for (const [column, text] of Object.entries(circuit.unread ?? {})) {
        const path = `${subject.path}.unread.${column}`;
        yield {
          subject: { ...subject, path },
          verdict: "open",
          parameters: { column, text },
          settledBy: [{ path, instrument: "ask", minutes }],
        };
      }
    }
    for (const [i, cell] of (index.record.survey?.unread ?? []).entries()) {
      const path = `survey.unread[${i}]`;
      yield {
        subject: { path, id: cell.row, name: `Survey row ${cell.row}` },
        verdict: "open",
        parameters: { column: cell.column, text: cell.text },
        settledBy: [{ path, instrument: "ask", minutes }],
      };
    }
  },
);

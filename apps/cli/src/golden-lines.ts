/**
 * Lines whose whole answer is kept in `goldens/`, by the name of the file; run on the files of `fusebook demo`. `packet` and `book` say only where the PDF
 * was written, which their own tests read as text and as pictures; here stands what they say when nobody named it.
 */
export const GOLDEN_LINES: Readonly<Record<string, string>> = {
  import: "import marsh-wren-survey.csv --into marsh-wren-base.fusebook.json -o coach.fusebook.json",
  "import-mapping": "import marsh-wren-survey.csv --show-mapping",
  check: "check marsh-wren.fusebook.json",
  "check-stop-metric": "check marsh-wren.fusebook.json --severity stop --units metric",
  solve: "solve marsh-wren.fusebook.json",
  "solve-spans": "solve marsh-wren.fusebook.json --on c1.04 --spans",
  "doubt-circuit": "doubt marsh-wren.fusebook.json c1.04 --samples 200",
  fuse: "fuse marsh-wren.fusebook.json c1.04",
  "fuse-policies": "fuse marsh-wren.fusebook.json c5.05 --policies nec,marine,road-vehicle --units metric",
  "fuse-totals": "fuse marsh-wren.fusebook.json --totals",
  plan: "plan marsh-wren.fusebook.json",
  "plan-front": "plan marsh-wren.fusebook.json --front --budget 1300 --lock m1 --forbid steady-feeds",
  "plan-why": "plan marsh-wren.fusebook.json --why l-awning-strip",
  "plan-export": "plan marsh-wren.fusebook.json --export lp plan.lp",
  hours: "hours marsh-wren.fusebook.json --profile evening --plan most-light",
  "hours-stored": "hours marsh-wren.fusebook.json --profile stored",
  packet: "packet marsh-wren.fusebook.json",
  prove: "prove marsh-wren.fusebook.json --readings marsh-wren-readings.json",
  book: "book marsh-wren.fusebook.json",
  bank: "bank marsh-wren.fusebook.json",
  "bank-set": "bank marsh-wren.fusebook.json --kind D8 --address 9 --enable b1",
  "bank-infer": "bank marsh-wren.fusebook.json --kind R8 --infer",
  dim: "dim marsh-wren.fusebook.json --as D8",
  "dim-circuit": "dim marsh-wren.fusebook.json c2.04 --as D8",
  tables: "tables",
  "tables-one": "tables blade-times",
  schema: "schema -o record.schema.json",
  demo: "demo -o marsh-wren",
};

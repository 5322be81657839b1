package sparewell.workbook.template;

/** Contents of a new workbook. */
enum TemplateKind {
  /** Sheets to fill, with example rows that are marked as such. */
  BLANK,
  /** One invented angler's season. */
  DEMO,
  /** The same season as kept by a sloppy hand, to show what the analyser finds. */
  MESSY
}

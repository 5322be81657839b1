package sparewell.workbook.template;

/** What a new workbook holds. */
enum TemplateKind {
  /** Sheets to fill, with example rows that are marked as such. */
  BLANK,
  /** One invented angler's season. */
  DEMO,
  /** The same season as kept by a sloppy hand, to show what the analyser finds. */
  MESSY
}

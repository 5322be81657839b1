package sparewell.stock;

import sparewell.season.Place;

/** Pieces of one item in one place. */
final class Account {
  final Place place;

  /** Whether a row of the stock sheet has the item there. */
  boolean inStock;

  /** Whether there is a count of it, perhaps one still to come. */
  boolean counted;

  /** Whether that count has no date. */
  boolean undated;

  /** Whether what is there is known by now. */
  boolean open;

  /** Whether it was ever bought into. */
  boolean bought;

  /** Below zero where more was carried out than was there. */
  int pieces;

  private boolean byStockRow;

  Account(Place place) {
    this.place = place;
  }

  /** Whether what was lost by now may be in a count still to come. */
  boolean countedLater() {
    return counted && !open;
  }

  /** A row of the stock sheet; several rows of one place are one count. */
  void countRow(int rowPieces) {
    pieces = byStockRow ? pieces + rowPieces : rowPieces;
    byStockRow = true;
    open = true;
  }

  void recount(int all) {
    pieces = all;
    byStockRow = false;
    open = true;
  }
}

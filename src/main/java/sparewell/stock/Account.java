package sparewell.stock;

import sparewell.season.Place;

/** Pieces of one item in one place. */
final class Account {
  final Place place;

  /** True where a row of the stock sheet has the item there. */
  boolean inStock;

  /** True where it is counted, perhaps at a later date. */
  boolean counted;

  /** True where that count has no date. */
  boolean undated;

  /** True once the pieces there are known. */
  boolean open;

  /** True once pieces were bought into it. */
  boolean bought;

  /** Below zero where more was carried out than was there. */
  int pieces;

  private boolean byStockRow;

  Account(Place place) {
    this.place = place;
  }

  /** True where what was lost by now may be in a count still to come. */
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

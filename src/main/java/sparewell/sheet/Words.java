package sparewell.sheet;

/** Small turns of phrase that several sheets share. */
final class Words {
  private Words() {}

  /** Like {@code 1 error} or {@code 3 errors}. */
  static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }
}

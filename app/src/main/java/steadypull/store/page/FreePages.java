package steadypull.store.page;

import java.util.BitSet;

/**
 * The pages that hold nothing any more (section 1.5, "The Freelist"): a chain of trunk pages, each
 * with the numbers of leaf pages, in which old rows may still stand.
 */
final class FreePages {
  private static final int FIRST_TRUNK_AT = 32;
  private static final int NUMBER_OCTETS = 4;

  private FreePages() {}

  /** The numbers of the free pages, as far as their list can be read. */
  static BitSet of(DatabasePages pages) {
    BitSet free = new BitSet();
    try {
      int trunk = header(pages).unsigned(NUMBER_OCTETS);
      while (pages.has(trunk) && !free.get(trunk)) {
        free.set(trunk);
        Octets octets = new Octets(pages.page(trunk), 0, pages.usableOctets());
        trunk = octets.unsigned(NUMBER_OCTETS);
        takeLeaves(pages, octets, free);
      }
    } catch (DamagedPageException e) {
      // The rest of the list is not known; old rows are told by what they say.
      return free;
    }
    return free;
  }

  private static Octets header(DatabasePages pages) throws DamagedPageException {
    byte[] first = pages.has(1) ? pages.page(1) : new byte[0];
    return new Octets(first, FIRST_TRUNK_AT, first.length);
  }

  private static void takeLeaves(DatabasePages pages, Octets octets, BitSet free)
      throws DamagedPageException {
    int leaves = octets.unsigned(NUMBER_OCTETS);
    if (leaves < 0 || leaves > octets.remaining() / NUMBER_OCTETS) {
      throw new DamagedPageException("more free pages than fit into their list");
    }
    for (int leaf = 0; leaf < leaves; leaf++) {
      int number = octets.unsigned(NUMBER_OCTETS);
      if (pages.has(number)) {
        free.set(number);
      }
    }
  }
}

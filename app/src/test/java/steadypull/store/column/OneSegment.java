package steadypull.store.column;

/** A trip of one piece, which may be damaged; it claims to reach from the start to 100 s. */
final class OneSegment implements SegmentSource {
  private final byte[] segment;
  private final byte[] overview;

  OneSegment(byte[] segment, byte[] overview) {
    this.segment = segment.clone();
    this.overview = overview.clone();
  }

  @Override
  public int count() {
    return 1;
  }

  @Override
  public long firstMicros(int number) {
    return 0;
  }

  @Override
  public long lastMicros(int number) {
    return 100_000_000;
  }

  @Override
  public byte[] segment(int number) {
    return segment.clone();
  }

  @Override
  public byte[] overview(int number) {
    return overview.clone();
  }
}

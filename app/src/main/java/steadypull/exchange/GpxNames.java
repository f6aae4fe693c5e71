package steadypull.exchange;

/** Words that both who reads and who writes GPX must know. */
final class GpxNames {
  static final String NAMESPACE = "http://www.topografix.com/GPX/1/1";

  /** The form before: the same elements as far as a route needs them. */
  static final String OLDER_NAMESPACE = "http://www.topografix.com/GPX/1/0";

  /** Ours, for what GPX has no element for. A name, not an address. */
  static final String OWN_NAMESPACE = "urn:steadypull:trip:1";

  static final String OWN_PREFIX = "steadypull";

  private GpxNames() {}
}

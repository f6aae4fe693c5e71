package steadypull.vehicle;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * Tells vehicles apart without telling their identification numbers. The same number gives the same
 * hash in every library; so that numbers cannot be tried out in bulk, one takes some ten
 * milliseconds (PBKDF2, RFC 8018, 5.2). Who knows a number can still check it: a hash is no secret.
 * A link that comes back brings the same vehicle, so the last answer is remembered.
 */
public final class VehicleNumberHash {
  private static final byte[] SALT = "vehicle number".getBytes(StandardCharsets.US_ASCII);
  private static final int ITERATIONS = 50_000;
  private static final int BITS = 64;
  private static final LastAnswer LAST = new LastAnswer(VehicleNumberHash::derive);

  private VehicleNumberHash() {}

  /**
   * The hash as 16 hexadecimal digits; empty for an empty number.
   *
   * @param number vehicle identification number, may be empty
   */
  public static String of(String number) {
    return number.isBlank() ? "" : LAST.to(number.strip());
  }

  private static String derive(String number) {
    try {
      PBEKeySpec spec = new PBEKeySpec(number.toCharArray(), SALT, ITERATIONS, BITS);
      byte[] hash =
          SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256").generateSecret(spec).getEncoded();
      return HexFormat.of().formatHex(hash);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Java comes without PBKDF2WithHmacSHA256", e);
    }
  }
}

package steadypull.ui;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javafx.css.CssParser;
import javafx.css.Declaration;
import javafx.css.Rule;
import javafx.css.Stylesheet;
import javafx.scene.paint.Color;

/**
 * The colours of one light, read from the same {@code tokens.css} that the style sheets look up, so
 * that canvas and nodes agree. Immutable.
 */
final class Palette {
  private static final Map<Light, Palette> READ = new EnumMap<>(Light.class);

  private final Map<Token, Color> colours = new EnumMap<>(Token.class);

  private Palette(Light light, Stylesheet sheet) {
    Rule rule = ruleOf(light, sheet);
    for (Token token : Token.values()) {
      colours.put(token, colourOf(token, rule));
    }
  }

  /** The palette of a light; read once. */
  static synchronized Palette of(Light light) {
    return READ.computeIfAbsent(light, each -> new Palette(each, tokens()));
  }

  /** The colour of a token. */
  Color colour(Token token) {
    return Objects.requireNonNull(colours.get(token));
  }

  private static Stylesheet tokens() {
    try {
      return new CssParser().parse(Objects.requireNonNull(Palette.class.getResource("tokens.css")));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(
          "The colours could not be read from tokens.css inside the program; install it again",
          unreadable);
    }
  }

  private static Rule ruleOf(Light light, Stylesheet sheet) {
    return sheet.getRules().stream()
        .filter(rule -> rule.getSelectors().toString().contains("." + light.styleClass()))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("tokens.css has no ." + light.styleClass()));
  }

  private static Color colourOf(Token token, Rule rule) {
    for (Declaration declaration : rule.getDeclarations()) {
      if (declaration.getProperty().equals(token.property())
          && declaration.getParsedValue().convert(null) instanceof Color colour) {
        return colour;
      }
    }
    throw new IllegalStateException("tokens.css has no colour " + token.property());
  }
}

package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;

/** First guesses for tables of invented loggers; every guess is then taken as it is. */
class MappingProposalTest {
  @TempDir private Path folder;
  private ForeignTables tables;

  @BeforeEach
  void inThisFolder() {
    tables = new ForeignTables(folder);
  }

  private ForeignTables.Read readAsProposed(Path file) throws Exception {
    return ForeignTables.read(file, new MappingText("proposed", MappingProposal.of(file), true));
  }

  @Test
  void anEnglishTableIsUnderstood() throws Exception {
    Path file =
        tables.file(
            """
            Device Time,Engine RPM,Coolant Temp (F),Boost note,Vehicle Speed (mph),Spare,Battery Voltage
            15/07/2026 09:45:12.5,1850,203,low,48,,14.1
            15/07/2026 09:45:13.5,1900,204,high,49,,14.2
            """);

    assertThat(MappingProposal.of(file))
        .isEqualTo(
            """
            # A first guess from the first 2 rows of foreign.csv.
            # Look through it, above all where it says "check", then: import FILE --map MAP.toml

            separator = ","
            decimal = "."

            [time]
            column = "Device Time"
            format = "d/M/uuuu H:mm:ss.S"
            # zone = "+02:00" # check: where its clock was; without it this machine's zone is taken

            [columns]
            "Engine RPM" = "engine_speed[r/min]" # values 1850 to 1900
            "Coolant Temp (F)" = "engine_coolant_temp[degF]" # values 203 to 204
            "Boost note" = "ignore" # check: it holds text, in 2 of 2 cells, such as "low"
            "Vehicle Speed (mph)" = "vehicle_speed[mph]" # values 48 to 49
            "Spare" = "ignore" # it is empty
            "Battery Voltage" = "module_voltage[V]" # check: the header tells no unit that is known; values 14.1 to 14.2 fit this one
            """);
    ForeignTables.Read read = readAsProposed(file);
    assertThat(read.table().start().moment()).hasToString("2026-07-15T09:45:12.500Z");
    assertThat(read.values()).startsWith(1850.0, 95.0);
  }

  @Test
  void aGermanTableWithDecimalCommasIsUnderstood() throws Exception {
    Path file =
        tables.file(
            """
            Uhrzeit;Motordrehzahl [U/min];Kühlmitteltemperatur [°C];Öltemperatur [°C];Geschwindigkeit [km/h];Ladelufttemperatur;Luftmasse [g/s]
            09:45:12,5;1850;95,5;101;48,2;63;40,1
            09:45:13,5;1900;95,7;102;48,9;64;41,7
            """,
            Charset.forName("windows-1252"));

    String proposed = MappingProposal.of(file);

    assertThat(proposed)
        .contains(
            "separator = \";\"",
            "decimal = \",\"",
            "encoding = \"windows-1252\"",
            "format = \"H:mm:ss,S\"",
            "\"Motordrehzahl [U/min]\" = \"engine_speed[r/min]\" # values",
            "\"Kühlmitteltemperatur [°C]\" = \"engine_coolant_temp[degC]\" # values 95.5 to 95.7",
            "\"Öltemperatur [°C]\" = \"engine_oil_temp[degC]\" # values",
            "\"Geschwindigkeit [km/h]\" = \"vehicle_speed[km/h]\" # values",
            "\"Ladelufttemperatur\" = \"charge_air_temp_out[degC]\" # check: the header tells no"
                + " unit",
            "\"Luftmasse [g/s]\" = \"air_mass_flow[g/s]\" # values");
    assertThat(readAsProposed(file).values()).contains(95.5, 48.2);
  }

  /** Headers in words of the trade, from English and German tools and handbooks. From memory. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ECT [°C] | engine_coolant_temp[degC]",
        "Kühlwassertemp. (Grad C) | engine_coolant_temp[degC]",
        "IAT [°C] | intake_air_temp[degC]",
        "Ansauglufttemperatur [°C] | intake_air_temp[degC]",
        "Outside temperature [°C] | ambient_air_temp[degC]",
        "Außentemperatur [°C] | ambient_air_temp[degC]",
        "Motoröltemperatur [°C] | engine_oil_temp[degC]",
        "Getriebeöltemperatur [°C] | transmission_fluid_temp[degC]",
        "Transmission Fluid Temperature [°F] | transmission_fluid_temp[degF]",
        "Abgastemperatur vor Turbolader [°C] | exhaust_temp_before_turbine[degC]",
        "EGT [°C] | exhaust_gas_temp[degC]",
        "MAP [kPa] | manifold_pressure[kPa]",
        "Saugrohrdruck [bar] | manifold_pressure[bar]",
        "Luftdruck [mbar] | barometric_pressure[mbar]",
        "MAF [g/s] | air_mass_flow[g/s]",
        "Drehzahl [1/min] | engine_speed[r/min]",
        "VSS (km/h) | vehicle_speed[km/h]",
        "Calculated engine load [%] | engine_load[%]",
        "Gaspedal [%] | accelerator_pedal[%]",
        "Istmoment [%] | delivered_torque[%]",
        "Reference torque [Nm] | reference_torque[N.m]",
        "Kraftstoffverbrauch [l/h] | fuel_rate[L/h]",
        "Gang | gear[1]",
        "Batteriespannung [V] | module_voltage[V]",
        "GPS Latitude | latitude[deg]",
        "Längengrad | longitude[deg]",
        "Höhe [m] | altitude[m]",
        "Coolant level [%] | coolant_level[%]",
        "42 | column_42[1]",
        "road_grade[%] | road_grade[%]",
        "Speed mph | vehicle_speed[mph]",
        "speed_mph | vehicle_speed[mph]",
        "SpeedMPH | vehicle_speed[mph]",
        "vehicle_speed_km_h | vehicle_speed[km/h]",
        "Speed km/h | vehicle_speed[km/h]",
        "Oil Temp K | engine_oil_temp[K]",
        "OilTempF | engine_oil_temp[degF]",
        "Oil temp deg C | engine_oil_temp[degC]",
        "MAP kPa | manifold_pressure[kPa]",
        "MAPkPa | manifold_pressure[kPa]",
        "Boost psi | boost[psi]",
        "Long | longitude[deg]",
        "GPS Long | longitude[deg]",
        "Lng | longitude[deg]",
        "Longitudinal acceleration | longitudinal_acceleration[1]",
        "Bank C | bank_c[1]",
      })
  void headersOfTheTradeAreKnown(String header, String use) throws Exception {
    Path file = tables.file("t [ms];%s\n0;3\n100;4\n".formatted(header));

    assertThat(MappingProposal.of(file)).contains("\"%s\" = \"%s\"".formatted(header, use));
    assertThat(readAsProposed(file).table().channels())
        .containsExactly(ColumnHeader.channel(Channel.ofHeader(use).orElseThrow()));
  }

  /** 3 and 4 mph, K or psi are as good as 3 and 4 of the unit that comes first. */
  @ParameterizedTest
  @ValueSource(
      strings = {"Speed mph", "speed_mph", "Oil Temp K", "Boost psi", "Engine RPM", "EGT F"})
  void aUnitWithoutBracketsCountsAsTold(String header) throws Exception {
    Path file = tables.file("t [ms];%s\n0;3\n100;4\n".formatted(header));

    assertThat(MappingProposal.of(file)).doesNotContain("tells no unit", "unit not told");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "timestamp|1784137512.25|1784137512.5|epoch-seconds",
        "timestamp|1784137512250|1784137512500|epoch-milliseconds",
        "Time (ms)|0|90|milliseconds",
        "Time [s]|0|0.09|seconds",
        "Zeit|0|90|milliseconds",
        "Time|2026-07-15T17:45:12.25Z|2026-07-15T17:45:12.5Z|iso-8601",
        "Time|2026-07-15 17:45:12|2026-07-15 17:45:13|iso-8601",
        "Time|7/15/2026 17:45:12|7/16/2026 17:45:13|M/d/uuuu H:mm:ss",
        "Time|15.07.2026 17:45:12,125|15.07.2026 17:45:13,25|d.M.uuuu H:mm:ss[,SSS][,SS]",
        "Datum|2026/07/15 7:45:12|2026/07/15 17:45:13|uuuu/M/d H:mm:ss",
        "anything|1|2|seconds",
        "Time|1:45:12 PM|1:45:13 PM|h:mm:ss a",
        "Time|11:59:59.5am|12:00:00.5pm|h:mm:ss.Sa",
        "Time|7/5/2026 1:45:12 AM|7/6/2026 1:45:13 PM|M/d/uuuu h:mm:ss a",
        "time_ms|0|1|milliseconds",
        "Time s|0|90|seconds",
      })
  void everyFormOfTimeIsGuessed(String header, String one, String other, String format)
      throws Exception {
    Path file = tables.file("%s;V\n%s;3\n%s;4\n".formatted(header, one, other));

    assertThat(MappingProposal.of(file)).contains("format = \"" + format + "\"");
    assertThat(readAsProposed(file).samples()).hasSize(2);
  }

  @Test
  void aDayInAColumnOfItsOwnIsNoticed() throws Exception {
    Path file = tables.file("Date,Time,V\n14.07.2026,23:59:59,3\n15.07.2026,00:00:01,4\n");

    assertThat(MappingProposal.of(file))
        .contains("column = \"Time\"", "date_column = \"Date\"", "format = \"d.M.uuuu H:mm:ss\"")
        .doesNotContain("\"Date\" = ");
    assertThat(readAsProposed(file).micros()).containsExactly(0L, 2_000_000L);
  }

  @Test
  void aTabledCounterFarFromZeroWithTwinRowsIsTaken() throws Exception {
    Path file = tables.file("T\tEngine speed [rpm]\n5000\t800\n5000\t801\n5001\n");
    String proposed = MappingProposal.of(file);

    assertThat(proposed)
        .contains(
            "separator = \"tab\"", "first_row_is_zero = true", "repeats = true", "ragged = true");
    assertThat(readAsProposed(file).micros()).containsExactly(0L, 1L);
  }

  @Test
  void aHeaderThatWasEncodedTwiceIsNoticed() throws Exception {
    String twice =
        new String("Öl [°C]".getBytes(StandardCharsets.UTF_8), Charset.forName("windows-1252"));

    assertThat(MappingProposal.of(tables.file("T," + twice + "\n0,80\n")))
        .contains("encoding = \"utf-8-twice\"", "\"Öl [°C]\"");
  }

  @Test
  void twinsAreToldApart() throws Exception {
    String proposed =
        MappingProposal.of(tables.file("T,Pedal D [%],Pedal E [%],Pedal D [%]\n0,1,2,3\n"));

    assertThat(proposed)
        .contains(
            "\"Pedal D [%]\" = \"accelerator_pedal[%]\"",
            "\"Pedal E [%]\" = \"pedal_e[%]\" # check: accelerator_pedal is \"Pedal D [%]\""
                + " already",
            "# check: column 4 has the same header as another");
  }

  /** Header words are somebody else's: they must not write into the mapping. */
  @Test
  void headersCannotBreakOutOfTheirQuotes() throws Exception {
    Path file = tables.file("T,\"a\"\" = \"\"x\nb\\\",\"#c\"\n0,1,\"te\nxt\"\n");

    assertThat(readAsProposed(file).samples()).hasSize(1);
  }

  /** How programs write that there is no value (common practice, no source). */
  @ParameterizedTest
  @ValueSource(strings = {"N/A", "-", "--", "null", "NaN", "n.a.", "#N/A"})
  void wordsForNoValueAreProposedAndPassedOver(String none) throws Exception {
    Path file = tables.file("T [s],Coolant [°C]\n0,%1$s\n1,95\n2,%1$s\n".formatted(none));

    assertThat(MappingProposal.of(file))
        .contains(
            "missing = [\"%s\"] # check: ".formatted(none),
            "\"engine_coolant_temp[degC]\" # values 95 to 95 and 2 cells without one");
    assertThat(readAsProposed(file).micros()).containsExactly(1_000_000L);
  }

  @Test
  void anUnknownWordMeansNoValueOnlyWhereItComesAgainAmongMoreNumbers() throws Exception {
    String again = MappingProposal.of(tables.file("T [s],V\n0,1\n1,cold\n2,cold\n3,4\n4,5\n"));
    String once = MappingProposal.of(tables.file("T [s],V\n0,1\n1,cold\n2,3\n3,4\n4,5\n"));
    String damaged = MappingProposal.of(tables.file("T [s],V\n0,1\n1,2x\n2,2x\n3,4\n4,5\n"));
    String many = MappingProposal.of(tables.file("T [s],V\n0,-\n1,--\n2,na\n3,nil\n4,5\n"));

    assertThat(again).contains("missing = [\"cold\"]", "V\" = \"v[1]\"");
    assertThat(once).contains("# check: it holds text, in 1 of 5 cells, such as \"cold\"");
    assertThat(damaged).contains("# check: it holds text, in 2 of 5 cells, such as \"2x\"");
    assertThat(many).contains("\"ignore\" # check: it holds text, in 4 of 5 cells");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0,95,-1.5e3\n1,96,2\n", "2026-07-15T17:45:12Z,95\n2026-07-15T17:45:13Z,96\n"})
  void aTableWithoutAHeaderLineIsToldOf(String table) throws Exception {
    String told = "# check: these headers are numbers; if the table has no header line";

    assertThat(MappingProposal.of(tables.file(table))).contains(told);
    assertThat(MappingProposal.of(tables.file("T,1,2\n" + table))).doesNotContain(told);
  }

  @Test
  void aTableWithoutTimesIsRefused() {
    assertThatThrownBy(() -> MappingProposal.of(tables.file("A,B\nx,1\ny,2\n")))
        .hasMessageContaining("expected a column with times, found none in its first 2 rows");
    assertThatThrownBy(() -> MappingProposal.of(tables.file("")))
        .hasMessageContaining("found an empty file");
  }
}

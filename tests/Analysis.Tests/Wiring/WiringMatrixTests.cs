using System.IO;
using System.Linq;
using LubeController.Analysis.Wiring;
using LubeController.Core;
using LubeController.Files.SettingsFiles;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Wiring;
using Xunit;

namespace LubeController.Analysis.Tests.Wiring;

/// <summary>The matrix of wirings so small that each entry can be said beforehand.</summary>
public sealed class WiringMatrixTests
{
    private static readonly SupervisoryWiringDescription Plain = new()
    {
        Supplies = [new("G1", "24V", "0V", 24, 0.2)],
        Fuses = [new("F1", "24V", "L", 2)],
        Wires = [new("W1", "X1", "A1"), new("W2", "X2", "A2")],
        Contacts =
        [
            new("K1", "healthy-relay", ContactSide.NormallyOpen, "L", "X1"),
            new("K2", "warning", ContactSide.NormallyOpen, "L", "X2"),
        ],
        Inputs = [new() { Name = "healthy", From = "A1", To = "0V", Type = InputType.Type1 }, new() { Name = "warning", From = "A2", To = "0V" }],
    };

    [Fact]
    public void Every_alarm_of_the_cores_table_stands_beside_every_single_fault_once()
    {
        WiringMatrix matrix = Of(Plain);
        for (int index = 0; index < AlarmTable.Count; index++)
            Assert.Equal(matrix.Faults.Count + 1, matrix.Rows.Count(row => row.Condition.Name == AlarmTable.Spec((AlarmId)index).Name));
        // Two wires: open, resistive, to supply, to ground; one pair; two contacts: welded, resistive; one fuse.
        Assert.Equal((2 * 4) + 1 + (2 * 2) + 1, matrix.Faults.Count);
        Assert.Equal(matrix.Conditions.Count * (matrix.Faults.Count + 1), matrix.Rows.Count);
        Assert.Contains(matrix.Conditions, condition => condition.Name == "no power");
    }

    [Theory]
    [InlineData(AlarmId.DividerStalled, "healthy on, warning off", "healthy off, warning off")]
    [InlineData(AlarmId.ReservoirLow, "healthy on, warning off", "healthy on, warning on")]
    public void Sound_wiring_tells_an_alarm_by_the_output_of_its_category(AlarmId id, string inHealth, string inAlarm)
    {
        WiringRow row = Row(Of(Plain), id, null);
        Assert.Equal((inHealth, inAlarm, WiringOutcome.Told), (row.InHealth.ToString(), row.InAlarm.ToString(), row.Outcome));
    }

    [Theory]
    [InlineData(AlarmId.DividerStalled, "wire-open", "W1", WiringOutcome.FaultSeenAlarmHidden, WiringMeasures.None)]
    [InlineData(AlarmId.DividerStalled, "wire-shorted-to-supply", "W1", WiringOutcome.LostUnseen, WiringMeasures.EndOfLineResistor | WiringMeasures.Heartbeat)]
    [InlineData(AlarmId.DividerStalled, "contact-welded", "K1", WiringOutcome.LostUnseen, WiringMeasures.Heartbeat)]
    [InlineData(AlarmId.DividerStalled, "wire-shorted-to-ground", "W1", WiringOutcome.FaultSeenAlarmHidden, WiringMeasures.None)]
    [InlineData(AlarmId.DividerStalled, "fuse-blown", "F1", WiringOutcome.FaultSeenAlarmHidden, WiringMeasures.None)]
    [InlineData(AlarmId.ReservoirLow, "wire-open", "W2", WiringOutcome.LostUnseen, WiringMeasures.NormallyClosedContact | WiringMeasures.EndOfLineResistor | WiringMeasures.Heartbeat | WiringMeasures.NormallyClosedWithEndOfLine)]
    [InlineData(AlarmId.ReservoirLow, "wire-shorted-to-ground", "W2", WiringOutcome.ToldOtherwise, WiringMeasures.None)]
    [InlineData(AlarmId.ReservoirLow, "wire-shorted-to-supply", "W2", WiringOutcome.FaultSeenAlarmHidden, WiringMeasures.None)]
    [InlineData(AlarmId.ReservoirLow, "wire-open", "W1", WiringOutcome.FaultSeenAlarmTold, WiringMeasures.None)]
    [InlineData(AlarmId.ReservoirLow, "wire-shorted-to-supply", "W1", WiringOutcome.ToldFaultUnseen, WiringMeasures.EndOfLineResistor | WiringMeasures.Heartbeat)]
    public void Each_fault_has_the_outcome_that_the_circuit_gives_it(AlarmId id, string name, string part, WiringOutcome outcome, WiringMeasures measures)
    {
        WiringFault kind = WiringFaults.All.Single(fault => fault.Name == name);
        WiringRow row = Row(Of(Plain), id, new WiringFaultCase(kind, part));
        Assert.Equal(outcome, row.Outcome);
        if (measures != WiringMeasures.None)
            Assert.Equal(measures, row.MadeVisibleBy);
    }

    [Fact]
    public void A_resistance_that_leaves_an_input_undefined_may_lose_the_alarm()
    {
        // 24 V over 10 and 6 kohm: 9 V and 1.5 mA at a type 1 input.
        WiringRow row = Row(Of(Plain), AlarmId.DividerStalled, new WiringFaultCase(WiringFaults.WireResistive, "W1"));
        Assert.Equal(WiringOutcome.MayBeLost, row.Outcome);
        Assert.Equal("healthy undefined, warning off", row.InHealth.ToString());
    }

    [Fact]
    public void An_alarm_that_no_wire_tells_is_listed_first()
    {
        WiringMatrix matrix = Of(Plain with
        {
            Wires = [.. Plain.Wires.Take(1)],
            Contacts = [.. Plain.Contacts.Take(1)],
            Inputs = [.. Plain.Inputs.Take(1)],
        });
        WiringRow row = Row(matrix, AlarmId.ReservoirLow, null);
        Assert.Equal(WiringOutcome.NeverTold, row.Outcome);
        Assert.Equal(WiringOutcome.NeverTold, matrix.Rows[0].Outcome);
        Assert.Equal(WiringOutcome.Told, Row(matrix, AlarmId.DividerStalled, null).Outcome);
    }

    [Fact]
    public void What_nobody_can_detect_comes_before_everything_else()
    {
        bool[] unseen = [.. Of(Plain).Rows.Select(row => WiringOutcomes.IsUnseen(row.Outcome))];
        int last = System.Array.LastIndexOf(unseen, true);
        Assert.True(last > 0 && last < unseen.Length - 1);
        Assert.DoesNotContain(false, unseen[..(last + 1)]);
    }

    [Fact]
    public void A_measure_that_is_advised_does_show_the_fault_when_it_is_taken()
    {
        SupervisoryWiringDescription closed = Plain with
        {
            Contacts = [Plain.Contacts[0], Plain.Contacts[1] with { Side = ContactSide.NormallyClosed }],
        };
        Assert.Equal(WiringOutcome.FaultSeenAlarmHidden, Row(Of(closed), AlarmId.ReservoirLow, new WiringFaultCase(WiringFaults.WireOpen, "W2")).Outcome);
    }

    [Fact]
    public void Settings_leave_out_alarms_whose_sensor_is_not_fitted()
    {
        var settings = new ControlSettings(new Settings(), null);
        settings.Values[SettingField.LevelLowFitted] = 1;
        settings.Values[SettingField.LevelEmptyFitted] = 0;
        string[] names = [.. WiringCondition.Of(settings).Select(condition => condition.Name)];
        Assert.Contains("reservoir-low", names);
        Assert.DoesNotContain("reservoir-empty", names);
        Assert.DoesNotContain("line-overpressure", names);
        Assert.DoesNotContain("rule-fault", names);
        Assert.Contains("lubrication-overdue", names);
    }

    [Fact]
    public void The_csv_has_a_line_for_each_row_and_quotes_what_it_must()
    {
        WiringMatrix matrix = Of(Plain);
        var text = new StringWriter();
        WiringCsv.Write(matrix, text);
        string[] lines = text.ToString().Split('\n');
        Assert.Equal(WiringCsv.Heading, lines[0]);
        Assert.Equal("", lines[^1]);
        Assert.Equal(matrix.Rows.Count + 2, lines.Length);
        Assert.Contains("divider-stalled,failure,contact-welded,K1,\"healthy on, warning off\",\"healthy on, warning off\",\"lost, nobody can detect it\",no,heartbeat", lines);
        Assert.Contains("divider-stalled,failure,none,,\"healthy on, warning off\",\"healthy off, warning off\",told,yes,", lines);
        Assert.All(lines[..^1], line => Assert.Equal(9, Cells(line)));
    }

    [Fact]
    public void The_page_stands_alone_and_its_tables_have_headers_and_captions()
    {
        var text = new StringWriter();
        WiringHtml.Write("Mill <1> & \"2\"", Of(Plain), text);
        string page = text.ToString();
        Assert.Contains("<title>Alarm wiring: Mill &lt;1&gt; &amp; &quot;2&quot;</title>", page, System.StringComparison.Ordinal);
        Assert.Contains("<html lang=\"en\">", page, System.StringComparison.Ordinal);
        Assert.DoesNotContain("http", page, System.StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, System.StringComparison.Ordinal);
        Assert.Equal(Count(page, "<table>"), Count(page, "<caption>"));
        Assert.Equal(Count(page, "<table>"), Count(page, "<th scope=\"col\">Fault</th>"));
        Assert.Equal(Count(page, "<tr>"), Count(page, "<th scope=\"row\">") + Count(page, "<thead>"));
        Assert.True(page.IndexOf("What nobody can detect", System.StringComparison.Ordinal) < page.IndexOf("Every alarm under every single fault", System.StringComparison.Ordinal));
        Assert.All(WiringText.Cautions, caution => Assert.Contains(caution, page, System.StringComparison.Ordinal));
    }

    private static WiringMatrix Of(SupervisoryWiringDescription wiring) => WiringMatrix.Of(wiring, WiringCondition.All);

    private static WiringRow Row(WiringMatrix matrix, AlarmId id, WiringFaultCase? fault) =>
        matrix.Rows.Single(row => row.Condition.Name == AlarmTable.Spec(id).Name && Equals(row.Fault, fault));

    private static int Count(string text, string part) => text.Split(part).Length - 1;

    private static int Cells(string line)
    {
        bool quoted = false;
        int cells = 1;
        foreach (char character in line)
        {
            quoted ^= character == '"';
            cells += character == ',' && !quoted ? 1 : 0;
        }

        return cells;
    }
}

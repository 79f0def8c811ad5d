using System.Linq;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Files.Tests.Support;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Files.Tests.Formats;

public sealed class PlantReaderTests
{
    private static readonly string Sample = System.IO.File.ReadAllText(Reads.Data("salt.plant.yaml"));

    [Fact]
    public void Every_field_of_a_plant_file_reaches_the_description_in_si()
    {
        PlantDescription plant = Read("salt.plant.yaml");
        Assert.Equal((LubricantKind.Grease, "Test grease"), (plant.Lubricant.Kind, plant.Lubricant.Name));
        Assert.Equal((4e-3, 3e-3, 5e-4, 1e-4, 2e-5), (plant.Reservoir.CapacityM3, plant.Reservoir.ContentM3, plant.Reservoir.LowLevelM3, Round(plant.Reservoir.EmptyLevelM3), Round(plant.Reservoir.LevelHysteresisM3)));
        Assert.Equal((SwitchContact.NormallyClosed, SwitchContact.NormallyOpen), (plant.Reservoir.LowContact, plant.Reservoir.EmptyContact));
        Assert.Equal(2e-7, Assert.IsType<ConstantFlowPumpDescription>(plant.Pump).FlowM3PerS, 1e-18);
        Assert.Equal((2e-5, 3e8, 0.0), (Round(plant.Line.VolumeM3), plant.Line.BulkModulusPa, plant.Line.AirM3));
        Assert.Equal(2e7, plant.Relief.OpeningPressurePa);
        Assert.Equal(["1", "2", "3", "4"], plant.Divider.Sections.Select(section => section.Name));
        Assert.Equal([1e-7, 2e-7, 2e-7, 5e-7], plant.Divider.Sections.Select(section => Round(section.VolumePerStrokeM3)));
        Assert.Equal([5e5, 8e5, 5e5, 5e5], plant.Divider.Sections.Select(section => section.BreakawayPa));
        Assert.Equal((SectionOutlets.Twin, SectionOutlets.Single), (plant.Divider.Sections[0].Outlets, plant.Divider.Sections[3].Outlets));
        Assert.Equal([0.0, 0.0, 0.0, 1.0], plant.Divider.Sections.Select(section => section.InitialTravel));
        Assert.Equal(new JoinDescription("2", "3", Side.L), Assert.Single(plant.Divider.Joins));
        Assert.Equal(["front-left", "front-right", "gland", "rear-a", "rear-b", "crosshead"], plant.Outlets.Select(outlet => outlet.Name));
        Assert.Equal([new PortDescription("2", Side.L), new PortDescription("3", Side.L)], plant.Outlets[2].Ports);
        Assert.Equal(1e6, plant.Outlets[1].BackPressurePa);
        CycleSwitchDescription cycle = Assert.Single(plant.CycleSwitches);
        Assert.Equal(("piston-4", "4", Side.R, 0.1, 0.05), (cycle.Name, cycle.Section, cycle.End, cycle.TripTravel, cycle.Hysteresis));
        Assert.Equal(new PressureSwitchDescription { TripPa = 1.5e7, ResetPa = 1.3e7 }, plant.PressureSwitch);
        Assert.Equal(new ShaftDescription { PulsesPerRevolution = 4, InitialSpeedRevPerS = 5, MinimumPulseWidthUs = 100, Duty = 0.5 }, plant.Shaft);
        Assert.True(plant.HasPressureTransmitter);
        Assert.Equal(293.15, plant.TemperatureK, 1e-9);
    }

    [Fact]
    public void A_plant_takes_over_what_another_one_says_and_overrides_it()
    {
        PlantDescription plant = Read("cam.plant.yaml");
        var cam = Assert.IsType<CamPumpDescription>(plant.Pump);
        Assert.Equal((6e-3, 4e-3, 4, 0.25), (cam.PistonBoreM, cam.StrokeM, cam.DeliverySegments, cam.InitialAngle));
        Assert.Equal(20.0 / 60.0, cam.SpeedRevPerS, 1e-12);
        Assert.Equal(0.9, cam.VolumetricEfficiency, 1e-12);
        Assert.Equal((3e8, 1e-6), (plant.Line.BulkModulusPa, Round(plant.Line.AirM3)));
        Assert.Equal(4, plant.Divider.Sections.Count);
        Assert.Equal(5e-6, plant.Divider.StrokeFlowLimitM3PerS, 1e-16);
        Assert.Equal(1e-9 / 60.0, plant.Divider.LandClearanceFlowM3PerS!.Value, 1e-20);
        Assert.Equal((LubricantKind.Oil, "Test oil"), (plant.Lubricant.Kind, plant.Lubricant.Name));
    }

    [Theory]
    [InlineData("volume: 20 cm3", "volume: 20 bar", "line.volume", "'bar' makes it a pressure, but a volume is expected")]
    [InlineData("volume: 20 cm3", "volume: 0.01 cm3", "line.volume", "a volume outside its range")]
    [InlineData("flow: 12 cm3/min", "bore: 6 mm", "pump.bore", "a constant-flow pump has no 'bore'")]
    [InlineData("kind: constant-flow", "kind: gear", "pump.kind", "the word is not one of 2 known ones")]
    [InlineData("ports: [1L]", "ports: [1]", "outlets[0].ports[0]", "a port is a section's name with L or R")]
    [InlineData("name: gland", "name: the gland", "outlets[2].name", "a name has letters, digits and hyphens, at most 40")]
    [InlineData("section: \"4\"", "section: \"9\"", "cycle-switches[0].section", "the plant cannot be built so")]
    [InlineData("first: \"2\"", "first: \"1\"", "divider.joins[0]", "the plant cannot be built so")]
    [InlineData("content: 3 l", "content: 5 l", "reservoir.content", "the plant cannot be built so")]
    [InlineData("reset: 130 bar", "reset: 160 bar", "pressure-switch.reset", "the plant cannot be built so")]
    [InlineData("end: R", "end: left", "cycle-switches[0].end", "the word is not one of 2 known ones")]
    [InlineData("pressure-transmitter: yes", "pressure-transmitter: true", "pressure-transmitter", "'yes' or 'no' is expected")]
    [InlineData("relief-valve:", "relief-valves:", "relief-valves", "a plant file has no field 'relief-valves'")]
    public void What_is_wrong_is_told_by_line_and_field(string old, string wrong, string field, string message)
    {
        using var folder = new TempFolder();
        string path = folder.Write("wrong.plant.yaml", Sample.Replace(old, wrong));
        var problems = new ProblemList();
        Assert.Null(PlantReader.Read(path, problems));
        Problem problem = problems.All[0];
        Assert.Equal((field, message), (problem.Field, problem.Message));
        Assert.True(problem.Place.Line > 1);
        Assert.NotEqual("", problem.Remedy);
    }

    [Fact]
    public void What_is_unusual_is_remarked_and_accepted()
    {
        using var folder = new TempFolder();
        string path = folder.Write("low.plant.yaml", Sample.Replace("content: 3 l", "content: 0.4 l"));
        LoadedPlant? plant = PlantReader.Read(path, new ProblemList());
        Problem remark = Assert.Single(plant!.Remarks);
        Assert.Equal(("reservoir.content", "0.4 l"), (remark.Field, remark.Value));
    }

    [Fact]
    public void Outlets_not_written_are_named_for_their_first_ports()
    {
        using var folder = new TempFolder();
        string path = folder.Write("bare.plant.yaml", string.Join('\n', Sample.Split("outlets:\n  - name: front-left")[0], "cycle-switches: []\n"));
        Assert.Equal(["1L", "2L", "4L", "1R", "2R", "3R"], PlantReader.Read(path, new ProblemList())!.Plant.Outlets.Select(outlet => outlet.Name));
    }

    [Fact]
    public void Tubes_leakages_and_losses_reach_the_description_in_si()
    {
        PlantDescription plant = Read("tubes.plant.yaml");
        Assert.Equal((2e-4, 0.02), (plant.Reservoir.AeratesBelowM3, plant.Reservoir.EntrainedAir));
        var cam = Assert.IsType<CamPumpDescription>(plant.Pump);
        Assert.Equal((1e-14, 0.1, 5e-9, 0.1), (Round(cam.SlipM3PerSPa), cam.FillingLoss, Round(cam.SpeedSagPerPa), cam.DeadVolume));
        Assert.Equal(4.5e7, cam.StallPressurePa);
        Assert.Equal((1.2, 2e5, 2e-7), (plant.Line.GasExponent, plant.Line.StrainerLossPa, Round(plant.Line.StrainerFlowM3PerS)));
        Assert.Equal([new LineSegmentDescription { LengthM = 3, BoreM = 8e-3, WallModulusPa = 35e9, Cells = 2 }, new LineSegmentDescription { LengthM = 1.5, BoreM = 6e-3 }], plant.Line.Segments);
        Assert.Equal(new ReliefDescription { OpeningPressurePa = 2e7, OverridePa = 2e6, RatedFlowM3PerS = 5e-7, ReseatPressurePa = 1.7e7 }, plant.Relief with { RatedFlowM3PerS = Round(plant.Relief.RatedFlowM3PerS) });
        Assert.Equal((3e5, "4"), (plant.Divider.HalfLimitLossPa, plant.Divider.IndicatorSection));
        SectionDescription section = plant.Divider.Sections[0];
        Assert.Equal((9e5, 7e5, 1e-15), (section.BreakawayPa, section.FrictionPa, Round(section.BypassM3PerSPa)));
        OutletDescription outlet = plant.Outlets[0];
        Assert.Equal((1e6, 3e5, 4.0, 3e-3), (outlet.BackPressurePa, outlet.CheckValvePa, outlet.LineLengthM, outlet.LineBoreM));
        Assert.Equal((2.0, 4e-3), (plant.Outlets[1].LineLengthM, plant.Outlets[1].LineBoreM));
        Assert.Equal(LinePlace.End, plant.PressureSwitch!.Place);
        var loop = new TransmitterLoopDescription { SupplyV = 20, LeastVoltageV = 9, LoopOhms = 300 };
        Assert.Equal(new PressureTransmitterDescription { RangePa = 2.5e7, LagS = 0.2, Place = LinePlace.End, Loop = loop }, plant.Transmitter);
        Assert.Equal(new SupplyDescription { NominalV = 12, LogicOnV = 10, LogicOffV = 8, HoldUpUs = 20_000 }, plant.ControlSupply);
        Assert.Equal(new PressureTransmitterDescription { RangePa = 3e7 }, plant.Gauge);
    }

    [Fact]
    public void What_a_plant_file_does_not_say_stays_as_the_description_has_it()
    {
        PlantDescription plant = Read("salt.plant.yaml");
        Assert.Equal(new LineDescription { VolumeM3 = plant.Line.VolumeM3, BulkModulusPa = 3e8, Segments = plant.Line.Segments }, plant.Line);
        Assert.Empty(plant.Line.Segments);
        Assert.Equal(new ReliefDescription { OpeningPressurePa = 2e7 }, plant.Relief);
        Assert.Equal(new SectionDescription { Name = "1", VolumePerStrokeM3 = plant.Divider.Sections[0].VolumePerStrokeM3 }, plant.Divider.Sections[0]);
        Assert.Equal(new PressureTransmitterDescription(), plant.Transmitter);
        Assert.Equal(new SupplyDescription(), plant.ControlSupply);
        Assert.Equal((null, null, 0, 0), (plant.Gauge, plant.VentValve, plant.Secondaries.Count, plant.Injectors.Count));
        Assert.Equal(new DividerDescription { Sections = [] }.HalfLimitLossPa, plant.Divider.HalfLimitLossPa);
        PlantDescription cam = Read("cam.plant.yaml");
        var plain = new CamPumpDescription { PistonBoreM = 1, StrokeM = 1, SpeedRevPerS = 1 };
        var read = (CamPumpDescription)cam.Pump;
        Assert.Equal((plain.SlipM3PerSPa, plain.FillingLoss, plain.SpeedSagPerPa, plain.DeadVolume), (read.SlipM3PerSPa, read.FillingLoss, read.SpeedSagPerPa, read.DeadVolume));
    }

    [Fact]
    public void A_secondary_divider_reaches_the_description()
    {
        SecondaryDividerDescription secondary = Assert.Single(Read("secondaries.plant.yaml").Secondaries);
        Assert.Equal(("left", "left-feed", 3e-5, 1.2e9), (secondary.Name, secondary.FedBy, Round(secondary.VolumeM3), secondary.BulkModulusPa));
        Assert.Equal([("a1", SectionOutlets.Twin), ("a2", SectionOutlets.Twin), ("a3", SectionOutlets.Single)], secondary.Divider.Sections.Select(section => (section.Name, section.Outlets)));
    }

    [Fact]
    public void Injectors_and_a_vent_valve_stand_in_the_place_of_a_divider()
    {
        PlantDescription plant = Read("injectors.plant.yaml");
        Assert.Empty(plant.Divider.Sections);
        Assert.Equal(
            [
                new InjectorDescription { Name = "i1", Outlet = "chain-left", VolumeM3 = 2e-7, DischargePa = 3e6, RechargePa = 8e5, RechargeS = 2, Segment = 1 },
                new InjectorDescription { Name = "i2", Outlet = "chain-right", VolumeM3 = 4e-7, DischargePa = 3.5e6, RechargePa = 1e6, Segment = 2 },
            ],
            plant.Injectors.Select(injector => injector with { VolumeM3 = Round(injector.VolumeM3) }));
        Assert.Equal(new VentValveDescription { OpenM3PerSPa = 5e-12, NormallyOpen = false }, plant.VentValve! with { OpenM3PerSPa = Round(plant.VentValve.OpenM3PerSPa) });
        Assert.Equal(["chain-left", "chain-right"], plant.Outlets.Select(outlet => outlet.Name));
        Assert.Equal((3.0, 0, LinePlace.End), (plant.Outlets[0].LineLengthM, plant.Outlets[0].Ports.Count, plant.PressureSwitch!.Place));
    }

    [Theory]
    [InlineData("tubes", "slip: 0.06 cm3/min/bar", "slip: 0.06 cm3/min", "pump.slip", "'cm3/min' makes it a flow, but a flow per pressure is expected")]
    [InlineData("tubes", "speed-sag: 0.05 %/bar", "speed-sag: 11 %/bar", "pump.speed-sag", "a fraction per pressure outside its range")]
    [InlineData("tubes", "stall-pressure: 450 bar", "stall-pressure: 0.5 bar", "pump.stall-pressure", "a pressure outside its range")]
    [InlineData("tubes", "gas-exponent: 1.2", "gas-exponent: 1.7", "line.gas-exponent", "a ratio outside its range")]
    [InlineData("tubes", "cells: 2", "cells: 9", "line.segments[0].cells", "the number is outside its range")]
    [InlineData("tubes", "{ length: 150 cm, bore: 6 mm }", "{ length: 150 cm }", "line.segments[1].bore", "a segment needs the field 'bore'")]
    [InlineData("tubes", "bore: 6 mm }", "bore: 6 mm, hose: yes }", "line.segments[1].hose", "a segment has no field 'hose'")]
    [InlineData("tubes", ", at-flow: 12 cm3/min", "", "line.strainer.at-flow", "a strainer needs the field 'at-flow'")]
    [InlineData("tubes", "reseat-pressure: 170 bar", "reseat-pressure: 201 bar", "relief-valve.reseat-pressure", "the plant cannot be built so")]
    [InlineData("tubes", "friction: 7 bar", "friction: 9.1 bar", "divider.sections[0].friction", "the plant cannot be built so")]
    [InlineData("tubes", "indicator: \"4\"", "indicator: \"5\"", "divider.indicator", "the plant cannot be built so")]
    [InlineData("tubes", "aerates-below: 0.2 l", "aerates-below: 4.1 l", "reservoir.aerates-below", "the plant cannot be built so")]
    [InlineData("tubes", "entrained-air: 2 %", "entrained-air: 21 %", "reservoir.entrained-air", "a ratio outside its range")]
    [InlineData("tubes", "length: 4 m, bore: 3 mm", "length: 4 m, bore: 0.4 mm", "outlets[0].line.bore", "a length outside its range")]
    [InlineData("tubes", "lag: 200 ms", "lag: 61 s", "pressure-transmitter.lag", "a time outside its range")]
    [InlineData("tubes", "range: 300 bar", "rang: 300 bar", "pressure-gauge.rang", "a pressure gauge has no field 'rang'")]
    [InlineData("tubes", "least-voltage: 9 V", "least-voltage: 20 V", "pressure-transmitter.least-voltage", "the plant cannot be built so")]
    [InlineData("tubes", "loop-resistance: 300 ohm", "loop-resistance: 300 V", "pressure-transmitter.loop-resistance", "'V' makes it a voltage, but a resistance is expected")]
    [InlineData("tubes", "stops-below: 8 V", "stops-below: 10 V", "control-supply.stops-below", "the plant cannot be built so")]
    [InlineData("tubes", "starts-at: 10 V", "starts-at: 12.1 V", "control-supply.starts-at", "the plant cannot be built so")]
    [InlineData("tubes", "hold-up: 20 ms", "hold-up: 11 s", "control-supply.hold-up", "a time outside its range")]
    [InlineData("tubes", "reset: 130 bar, place: end", "reset: 130 bar, place: divider", "pressure-switch.place", "the word is not one of 2 known ones")]
    [InlineData("secondaries", "fed-by: left-feed", "fed-by: a3", "secondary-dividers[0].fed-by", "the plant cannot be built so")]
    [InlineData("secondaries", "- { name: a3, volume-per-stroke: 0.2 cm3, outlets: single }", "- { name: \"1\", volume-per-stroke: 0.2 cm3, outlets: single }", "secondary-dividers[0].divider.sections[2].name", "the plant cannot be built so")]
    [InlineData("injectors", "segment: 2", "segment: 3", "injectors[1].segment", "the plant cannot be built so")]
    [InlineData("injectors", "outlet: chain-left", "outlet: chain", "injectors[0].outlet", "the plant cannot be built so")]
    [InlineData("injectors", "recharge: 8 bar", "recharge: 30 bar", "injectors[0].recharge", "the plant cannot be built so")]
    [InlineData("injectors", "- { name: chain-right }", "- { name: chain-right, ports: [1L] }", "outlets[1].ports", "an outlet that an injector feeds has no ports")]
    [InlineData("injectors", "normally-open: no", "normally-open: off", "vent-valve.normally-open", "'yes' or 'no' is expected")]
    [InlineData("injectors", "vent-valve: { open-flow: 30 cm3/min/bar, normally-open: no }\n", "", "vent-valve", "the plant cannot be built so")]
    public void What_is_wrong_with_tubes_secondaries_and_injectors_is_told_by_field(string sample, string old, string wrong, string field, string message)
    {
        using var folder = new TempFolder();
        foreach (string file in (string[])["salt.plant.yaml", "cam.plant.yaml", "invented-oil.lubricant.yaml", "invented-grease.lubricant.yaml"])
            folder.Write(file, System.IO.File.ReadAllText(Reads.Data(file)));
        string text = System.IO.File.ReadAllText(Reads.Data(sample + ".plant.yaml"));
        Assert.Contains(old, text);
        string path = folder.Write("wrong.plant.yaml", text.Replace(old, wrong));
        var problems = new ProblemList();
        Assert.Null(PlantReader.Read(path, problems));
        Problem problem = problems.All[0];
        Assert.Equal((field, message), (problem.Field, problem.Message));
        Assert.True(problem.Place.Line >= 1);
        Assert.NotEqual("", problem.Remedy);
    }

    /// <summary>The file's ranges and the plant's own: what the one takes, the other takes too, at both ends.</summary>
    [Theory]
    [InlineData("tubes", "gas-exponent: 1.2", "gas-exponent: 1", "gas-exponent: 1.67")]
    [InlineData("tubes", "length: 3 m, bore: 8 mm, wall-modulus: 35 GPa, cells: 2", "length: 1 cm, bore: 0.5 mm, wall-modulus: 1 MPa, cells: 1", "length: 1000 m, bore: 100 mm, wall-modulus: 10000 GPa, cells: 8")]
    [InlineData("tubes", "loss: 2 bar, at-flow: 12 cm3/min", "loss: 0 bar, at-flow: 0.00006 cm3/min", "loss: 100 bar, at-flow: 600000 cm3/min")]
    [InlineData("tubes", "override: 20 bar", "override: 0 bar", "override: 1000 bar")]
    [InlineData("tubes", "rated-flow: 30 cm3/min", "rated-flow: 1e-9 m3/s", "rated-flow: 0.01 m3/s")]
    [InlineData("tubes", "reseat-pressure: 170 bar", "reseat-pressure: 1 Pa", "reseat-pressure: 200 bar")]
    [InlineData("tubes", "slip: 0.06 cm3/min/bar", "slip: 0 cm3/min/bar", "slip: 1e-9 m3/s/Pa")]
    [InlineData("tubes", "filling-loss: 0.1", "filling-loss: 0", "filling-loss: 10")]
    [InlineData("tubes", "speed-sag: 0.05 %/bar", "speed-sag: 0 1/Pa", "speed-sag: 1e-6 1/Pa")]
    [InlineData("tubes", "dead-volume: 10 %", "dead-volume: 0 %", "dead-volume: 100 %")]
    [InlineData("tubes", "half-limit-loss: 3 bar", "half-limit-loss: 1 Pa", "half-limit-loss: 100 bar")]
    [InlineData("tubes", "friction: 7 bar, bypass: 6 mm3/min/bar", "friction: 0 bar, bypass: 0 mm3/min/bar", "friction: 9 bar, bypass: 1e-9 m3/s/Pa")]
    [InlineData("tubes", "check-valve: 3 bar, line: { length: 4 m, bore: 3 mm }", "check-valve: 0 bar, line: { length: 0 m, bore: 0.5 mm }", "check-valve: 500 bar, line: { length: 1000 m, bore: 100 mm }")]
    [InlineData("tubes", "range: 250 bar, lag: 200 ms", "range: 1 bar, lag: 0 s", "range: 1000 bar, lag: 60 s")]
    [InlineData("tubes", "supply: 20 V, least-voltage: 9 V, loop-resistance: 300 ohm", "supply: 1 V, least-voltage: 0.9 V, loop-resistance: 1 ohm", "supply: 48 V, least-voltage: 47.9 V, loop-resistance: 10 kohm")]
    [InlineData("tubes", "voltage: 12 V, starts-at: 10 V, stops-below: 8 V, hold-up: 20 ms", "voltage: 1 V, starts-at: 0.5 V, stops-below: 0.1 V, hold-up: 0 s", "voltage: 48 V, starts-at: 48 V, stops-below: 47.9 V, hold-up: 10 s")]
    [InlineData("tubes", "entrained-air: 2 %", "entrained-air: 0 %", "entrained-air: 20 %")]
    [InlineData("secondaries", "volume: 30 cm3", "volume: 0.1 cm3", "volume: 1 m3")]
    [InlineData("secondaries", "bulk-modulus: 1.2 GPa", "bulk-modulus: 1 MPa", "bulk-modulus: 10 GPa")]
    [InlineData("injectors", "volume: 0.2 cm3, discharge: 30 bar, recharge: 8 bar, recharge-time: 2 s", "volume: 1 mm3, discharge: 0.1 bar, recharge: 0 bar, recharge-time: 1 ms", "volume: 1000 cm3, discharge: 500 bar, recharge: 499 bar, recharge-time: 1 h")]
    [InlineData("injectors", "open-flow: 30 cm3/min/bar", "open-flow: 1e-15 m3/s/Pa", "open-flow: 1e-6 m3/s/Pa")]
    public void Both_ends_of_a_range_are_taken_by_file_and_plant(string sample, string old, string least, string most)
    {
        using var folder = new TempFolder();
        foreach (string file in (string[])["salt.plant.yaml", "cam.plant.yaml", "invented-oil.lubricant.yaml", "invented-grease.lubricant.yaml"])
            folder.Write(file, System.IO.File.ReadAllText(Reads.Data(file)));
        string text = System.IO.File.ReadAllText(Reads.Data(sample + ".plant.yaml"));
        Assert.Contains(old, text);
        foreach (string end in (string[])[least, most])
        {
            var problems = new ProblemList();
            PlantReader.Read(folder.Write("end.plant.yaml", text.Replace(old, end)), problems);
            Assert.Empty(problems.All.Select(problem => problem.ToString()));
        }
    }

    private static PlantDescription Read(string name)
    {
        var problems = new ProblemList();
        LoadedPlant? plant = PlantReader.Read(Reads.Data(name), problems);
        Assert.Empty(problems.All.Select(problem => problem.ToString()));
        Assert.Empty(plant!.Remarks);
        return plant.Plant;
    }

    private static double Round(double value) => double.Parse(value.ToString("G12", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);
}

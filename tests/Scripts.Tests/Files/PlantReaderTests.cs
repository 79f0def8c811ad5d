using System.Linq;
using LubeController.Plant.Description;
using LubeController.Scripts.PlantFiles;
using LubeController.Scripts.Reading;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Files;

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

using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Plant.Description;
using LubeController.Plant.Lubricant;
using LubeController.Scripts.Reporting;
using LubeController.Scripts.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Reporting;

public sealed class AssumptionTextTests
{
    private static readonly PlantDescription Salt = PlantReader.Read(Reads.Data("salt.plant.yaml"), new ProblemList())!.Plant;

    [Fact]
    public void What_is_assumed_or_only_from_memory_is_one_line_a_plant_with_values_and_reasons() => Assert.Equal(
        [
            "assumed: Salt works, brine pump (an invented plant for tests) (Test grease): yield stress at 25 degC 200 Pa (invented for tests); "
            + "temperature coefficient of the yield stress 0.02 1/K (no figure for this grease: halved every 35 K); "
            + "temperature coefficient of the consistency 0.04 1/K (invented for tests)",
        ],
        AssumptionText.Of([Salt, Salt]));

    [Fact]
    public void Units_are_those_that_people_use()
    {
        var oil = new OilDescription
        {
            Name = "y",
            DensityKgPerM3 = new(900, "a", Confidence.Measured),
            ExpansionPerK = new(0, "b", Confidence.Published),
            BulkModulusPa = new(1.75e9, "c", Confidence.Assumed),
            Viscosity = new() { At40M2PerS = new(2.2e-4, "d", Confidence.FromMemory), Slope = new(3.6, "e", Confidence.Assumed) },
        };
        Assert.Equal(["assumed: x (y): viscosity at 40 degC 220 mm2/s (d); viscosity slope 3.6 (e); bulk modulus 1.75 GPa (c)"], AssumptionText.Of([Salt with { Name = "x", Lubricant = oil }]));
    }

    [Fact]
    public void A_plant_of_which_everything_is_known_needs_no_line() =>
        Assert.Empty(AssumptionText.Of([PlantReader.Read(Reads.Data("cam.plant.yaml"), new ProblemList())!.Plant]));
}

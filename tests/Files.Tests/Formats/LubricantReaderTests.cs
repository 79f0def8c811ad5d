using System.IO;
using System.Linq;
using LubeController.Files.LubricantFiles;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Files.Tests.Support;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Files.Tests.Formats;

public sealed class LubricantReaderTests
{
    private static readonly string Grease = File.ReadAllText(Reads.Data("invented-grease.lubricant.yaml"));
    private static readonly string Oil = File.ReadAllText(Reads.Data("invented-oil.lubricant.yaml"));
    private static readonly string Plant = File.ReadAllText(Reads.Data("salt.plant.yaml"));

    [Fact]
    public void Every_field_of_a_grease_reaches_the_description_in_si_with_source_and_confidence()
    {
        var grease = Assert.IsType<GreaseDescription>(Read("invented-grease.lubricant.yaml"));
        Assert.Equal(("Test grease", "1"), (grease.Name, grease.NlgiGrade));
        Assert.Equal(new SourcedValue(200, "invented for tests", Confidence.Assumed), grease.YieldStressPa);
        Assert.Equal(new SourcedValue(4, "a rheometer that does not exist", Confidence.Measured), grease.ConsistencyPaSn);
        Assert.Equal(0.8, grease.FlowIndex.Value);
        Assert.Equal(GreaseDescription.AssumedYieldCoefficientPerK, grease.YieldCoefficientPerK);
        Assert.Equal(new SourcedValue(0.04, "invented for tests", Confidence.FromMemory), grease.ConsistencyCoefficientPerK);
        Assert.Null(grease.BaseOil);
        Assert.Equal((900, 0.0007, 1.5e9), (grease.DensityKgPerM3.Value, grease.ExpansionPerK.Value, grease.BulkModulusPa.Value));
        Assert.Equal(Confidence.Published, grease.DensityKgPerM3.Confidence);
    }

    [Fact]
    public void Every_field_of_an_oil_reaches_the_description_in_si()
    {
        var oil = Assert.IsType<OilDescription>(Read("invented-oil.lubricant.yaml"));
        Assert.Equal(("Test oil", 220.0), (oil.Name, oil.IsoViscosityGrade));
        Assert.Equal(2.2e-4, oil.Viscosity.At40M2PerS.Value, 1e-18);
        Assert.Equal(Confidence.Standard, oil.Viscosity.At40M2PerS.Confidence);
        Assert.Equal(2.5e-5, oil.Viscosity.SecondM2PerS!.Value, 1e-18);
        Assert.Equal(363.15, oil.Viscosity.SecondTemperatureK, 1e-9);
        Assert.Null(oil.Viscosity.Slope);
        Assert.Equal(890, oil.DensityKgPerM3.Value, 1e-9);
    }

    [Fact]
    public void An_oil_may_give_the_slope_and_a_grease_its_base_oil()
    {
        using var folder = new TempFolder();
        string slope = Oil[..Oil.IndexOf("second-viscosity", System.StringComparison.Ordinal)] + Sourced("viscosity-slope", "3.6") + Oil[Oil.IndexOf("density", System.StringComparison.Ordinal)..];
        var oil = (OilDescription)LubricantReader.Read(folder.Write("slope.lubricant.yaml", slope), new ProblemList())!;
        Assert.Equal(3.6, oil.Viscosity.Slope!.Value);
        Assert.Null(oil.Viscosity.SecondM2PerS);

        string based = Grease.Replace("consistency-coefficient:\n  value: 0.04 1/K\n  confidence: from-memory\n  source: invented for tests\n", "base-oil:\n  viscosity-at-40: { value: 150 mm2/s, confidence: assumed, source: x }\n  second-viscosity: { value: 15 mm2/s, confidence: assumed, source: x }\n", System.StringComparison.Ordinal);
        var grease = (GreaseDescription)LubricantReader.Read(folder.Write("based.lubricant.yaml", based), new ProblemList())!;
        Assert.Equal((1.5e-4, 373.15), (grease.BaseOil!.At40M2PerS.Value, grease.BaseOil.SecondTemperatureK));
    }

    [Theory]
    [InlineData("value: 200 Pa", "value: 200 s", "yield-stress.value", "'s' makes it a time, but a pressure is expected")]
    [InlineData("value: 200 Pa", "value: 2 bar 3", "yield-stress.value", "a pressure is expected, a number and its unit")]
    [InlineData("value: 200 Pa", "value: 200 bar", "yield-stress.value", "a pressure outside its range")]
    [InlineData("value: 4 Pa.s^n", "value: 4 Pa", "consistency.value", "'Pa' makes it a pressure, but a consistency is expected")]
    [InlineData("value: 0.8", "value: 1.8", "flow-index.value", "a ratio outside its range")]
    [InlineData("confidence: from-memory", "confidence: sure", "consistency-coefficient.confidence", "the word is not one of 5 known ones")]
    [InlineData("  confidence: from-memory\n", "", "consistency-coefficient.confidence", "a sourced value needs the field 'confidence'")]
    [InlineData("  value: 0.8\n", "", "flow-index.value", "a sourced value needs the field 'value'")]
    [InlineData("source: a rheometer that does not exist", "source:", "consistency.source", "nothing is written here")]
    [InlineData("source: a rheometer that does not exist", "note: x", "consistency.note", "a sourced value has no field 'note'")]
    [InlineData("kind: grease", "kind: water", "kind", "the word is not one of 2 known ones")]
    [InlineData("nlgi-grade: \"1\"", "nlgi-grade: 7", "nlgi-grade", "the lubricant cannot be so")]
    [InlineData("nlgi-grade: \"1\"", "iso-viscosity-grade: 150", "iso-viscosity-grade", "a grease has no 'iso-viscosity-grade'")]
    [InlineData("density:", "densty:", "densty", "a lubricant file has no field 'densty'")]
    [InlineData("consistency-coefficient:", "yield-coefficient:", "base-oil", "the lubricant cannot be so")]
    public void What_is_wrong_with_a_grease_is_told_by_line_and_field(string old, string wrong, string field, string message) =>
        AssertTold(Grease, old, wrong, field, message);

    [Theory]
    [InlineData("iso-viscosity-grade: 220", "iso-viscosity-grade: 230", "iso-viscosity-grade", "the lubricant cannot be so")]
    [InlineData("value: 220 mm2/s", "value: 243 mm2/s", "viscosity-at-40.value", "the lubricant cannot be so")]
    [InlineData("value: 25 mm2/s", "value: 225 mm2/s", "second-viscosity.value", "the lubricant cannot be so")]
    [InlineData("temperature: 90 degC", "temperature: 45 degC", "second-viscosity.value", "the lubricant cannot be so")]
    [InlineData("second-viscosity:\n  temperature: 90 degC", "yield-stress:", "yield-stress", "an oil has no 'yield-stress'")]
    [InlineData("kind: oil\n", "", "kind", "a lubricant file needs the field 'kind'")]
    [InlineData("lubricant: Test oil\n", "plant: x\n", "plant", "a lubricant file has no field 'plant'")]
    public void What_is_wrong_with_an_oil_is_told_by_line_and_field(string old, string wrong, string field, string message) =>
        AssertTold(Oil, old, wrong, field, message);

    [Fact]
    public void A_plant_takes_its_lubricant_from_a_file_and_may_replace_single_values_with_their_sources()
    {
        using var folder = new TempFolder();
        string path = folder.Write("own.plant.yaml", Plant.Replace("  file: invented-grease.lubricant.yaml\n", "  file: invented-grease.lubricant.yaml\n  yield-stress: { value: 350 Pa, confidence: measured, source: a drum in the yard }\n", System.StringComparison.Ordinal));
        var grease = (GreaseDescription)PlantReader.Read(path, new ProblemList())!.Plant.Lubricant;
        Assert.Equal(new SourcedValue(350, "a drum in the yard", Confidence.Measured), grease.YieldStressPa);
        Assert.Equal(4, grease.ConsistencyPaSn.Value);
    }

    [Theory]
    [InlineData("file: none.lubricant.yaml", 4, "lubricant.file")]
    [InlineData("yield-stress: { value: 350 Pa, confidence: measured, source: x }", 4, "lubricant.file")]
    [InlineData("file: plain.settings.yaml", 2, Problem.WholeFile)]
    [InlineData("file: invented-grease.lubricant.yaml\n  yield-stress: { value: 350 mm, confidence: measured, source: x }", 5, "lubricant.yield-stress.value")]
    [InlineData("file: invented-oil.lubricant.yaml\n  viscosity-at-40: { value: 100 mm2/s, confidence: measured, source: x }", 5, "lubricant.viscosity-at-40.value")]
    [InlineData("file: invented-oil.lubricant.yaml\n  kind: grease", 5, "lubricant.kind")]
    public void What_is_wrong_with_a_plants_lubricant_is_told_by_line_and_field(string wrong, int line, string field)
    {
        using var folder = new TempFolder();
        var problems = new ProblemList();
        Assert.Null(PlantReader.Read(folder.Write("wrong.plant.yaml", Plant.Replace("file: invented-grease.lubricant.yaml", wrong, System.StringComparison.Ordinal)), problems));
        Assert.Equal((line, field), (problems.All[0].Place.Line, problems.All[0].Field));
        Assert.NotEqual("", problems.All[0].Remedy);
    }

    [Fact]
    public void Every_lubricant_file_is_sound_and_can_be_pumped_from_the_cold_to_the_heat()
    {
        string[] files = Directory.GetFiles(Path.Combine(System.AppContext.BaseDirectory, "hil-scripts", "lubricants"));
        Assert.True(files.Length >= 9);
        Assert.All(files, file =>
        {
            var problems = new ProblemList();
            LubricantDescription? description = LubricantReader.Read(file, problems);
            Assert.Empty(problems.All.Select(problem => problem.ToString()));
            var lubricant = new LubricantProperties(description!, 253.15);
            double cold = lubricant.ApparentViscosityPaS;
            lubricant.SetTemperature(373.15);
            Assert.InRange(lubricant.ApparentViscosityPaS, 1e-3, cold / 4);
        });
    }

    private static string Sourced(string key, string value) => $"{key}: {{ value: {value}, confidence: assumed, source: x }}\n";

    private static LubricantDescription Read(string name)
    {
        var problems = new ProblemList();
        LubricantDescription? lubricant = LubricantReader.Read(Reads.Data(name), problems);
        Assert.Empty(problems.All.Select(problem => problem.ToString()));
        return lubricant!;
    }

    private static void AssertTold(string sample, string old, string wrong, string field, string message)
    {
        Assert.Contains(old, sample, System.StringComparison.Ordinal);
        using var folder = new TempFolder();
        var problems = new ProblemList();
        int at = sample.IndexOf(old, System.StringComparison.Ordinal);
        Assert.Null(LubricantReader.Read(folder.Write("wrong.lubricant.yaml", sample[..at] + wrong + sample[(at + old.Length)..]), problems));
        Assert.Contains((field, message), problems.All.Select(problem => (problem.Field, problem.Message)));
        Assert.All(problems.All, problem => Assert.True(problem.Place.Line >= 1 && problem.Remedy.Length > 0));
    }
}

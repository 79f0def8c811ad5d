using System;
using System.IO;
using LubeController.Plant.Description;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Files.Tests.Schemas;

/// <summary>Schemas and reference page of plant and lubricant files say what the fields declare.</summary>
public sealed class FieldPagesTests
{
    [Fact]
    public void The_plant_schema_is_that_of_the_plants_fields() => Matches("schema/plant.schema.json", FieldSchema.Of(
        PlantFields.All,
        "Plant file of lubebench",
        "One lubrication system. Quantities are a number and a unit.",
        "Another plant file, relative to this one, whose fields this one overrides. Groups are merged; lists, single values and groups of another kind are replaced."));

    [Fact]
    public void The_lubricant_schema_is_that_of_the_lubricants_fields() => Matches("schema/lubricant.schema.json", FieldSchema.Of(
        LubricantFields.All,
        "Lubricant file of lubebench",
        "An oil or a grease. Every value says where it comes from and how far it can be relied on.",
        "Another lubricant file, relative to this one, whose fields this one overrides. Groups are merged, single values replaced."));

    [Fact]
    public void The_reference_page_is_that_of_the_fields() => Matches("PLANT-FIELDS.md", FieldPage.Of(("Plant files", PlantFields.All), ("Lubricant files", LubricantFields.All)));

    /// <summary>Set LUBEBENCH_WRITE_FIELDS to 1 to write the file after a change of the fields.</summary>
    private static void Matches(string file, string expected)
    {
        string path = Path.Combine(Repository.Root, "hil-scripts", file);
        if (Environment.GetEnvironmentVariable("LUBEBENCH_WRITE_FIELDS") is { Length: > 0 })
            File.WriteAllText(path, expected);
        Assert.Equal(expected, File.ReadAllText(path).ReplaceLineEndings("\n"));
    }
}

using LubeController.Plant.Description;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Files.Tests.Schemas;

/// <summary>Schemas and reference page of plant and lubricant files say what the fields declare.</summary>
public sealed class FieldPagesTests
{
    [Fact]
    [Trait("Renews", "pages")]
    public void The_plant_schema_is_that_of_the_plants_fields() => MadePage.Check("hil-scripts/schema/plant.schema.json", _ => FieldSchema.Of(
        PlantFields.All,
        "Plant file of lubebench",
        "One lubrication system. Quantities are a number and a unit.",
        "Another plant file, relative to this one, whose fields this one overrides. Groups are merged; lists, single values and groups of another kind are replaced."));

    [Fact]
    [Trait("Renews", "pages")]
    public void The_lubricant_schema_is_that_of_the_lubricants_fields() => MadePage.Check("hil-scripts/schema/lubricant.schema.json", _ => FieldSchema.Of(
        LubricantFields.All,
        "Lubricant file of lubebench",
        "An oil or a grease. Every value says where it comes from and how far it can be relied on.",
        "Another lubricant file, relative to this one, whose fields this one overrides. Groups are merged, single values replaced."));

    [Fact]
    [Trait("Renews", "pages")]
    public void The_reference_page_is_that_of_the_fields() => MadePage.Check("hil-scripts/PLANT-FIELDS.md", _ => FieldPage.Of(("Plant files", PlantFields.All), ("Lubricant files", LubricantFields.All)));
}

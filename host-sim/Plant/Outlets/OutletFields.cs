using LubeController.Plant.Fields;

namespace LubeController.Plant.Outlets;

/// <summary>The fields of an outlet.</summary>
public static class OutletFields
{
    internal const int Most = 128;

    private static readonly OutletDescription Blank = new() { Name = "", Ports = [] };

    internal static TextField<OutletDescription> Name { get; } = new("name", "", TextForm.Name, "drive-end-bearing", o => o.Name, (o, v) => o with { Name = v }) { Required = true };

    private static readonly FieldSet<OutletDescription> Line = new(
        "an outlet's line",
        Blank,
        new NumberField<OutletDescription>("length", "", Measure.Length, "m", 0, 1000, o => o.LineLengthM, (o, v) => o with { LineLengthM = v }) { Required = true },
        new NumberField<OutletDescription>("bore", "", Measure.Length, "mm", 5e-4, 0.1, o => o.LineBoreM, (o, v) => o with { LineBoreM = v }));

    /// <summary>An outlet at ports of dividers.</summary>
    public static FieldSet<OutletDescription> AtPorts { get; } = Make(new PortsField { Remedy = "write a list of sections with sides, for instance [1L, 1R]" });

    /// <summary>An outlet that an injector feeds, and which has no ports.</summary>
    public static FieldSet<OutletDescription> AtInjector { get; } = Make(new PortsField { AreRefused = true });

    private static FieldSet<OutletDescription> Make(PortsField ports) => new(
        "an outlet",
        Blank,
        Name,
        ports,
        new NumberField<OutletDescription>("back-pressure", "What the point holds against the lubricant.", Measure.Pressure, "bar", 0, 5e7, o => o.BackPressurePa, (o, v) => o with { BackPressurePa = v }),
        new NumberField<OutletDescription>("check-valve", "Pressure that opens the check valve at the point.", Measure.Pressure, "bar", 0, 5e7, o => o.CheckValvePa, (o, v) => o with { CheckValvePa = v }),
        new GroupField<OutletDescription, OutletDescription>("line", "The line from outlet to point.", Line, o => o, (o, v) => o with { LineLengthM = v.LineLengthM, LineBoreM = v.LineBoreM }));
}

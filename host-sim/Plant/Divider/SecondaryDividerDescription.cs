namespace LubeController.Plant.Divider;

/// <summary>A divider that is fed by an outlet of another one.</summary>
public sealed record SecondaryDividerDescription
{
    /// <summary>Name, unique among the dividers, not empty.</summary>
    public required string Name { get; init; }

    /// <summary>Name of the outlet that feeds it: one of the main divider, or of a secondary before it in the list.</summary>
    public required string FedBy { get; init; }

    /// <summary>Volume between that outlet and this divider, m3, 1e-7 to 1.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Bulk modulus of that volume, Pa, 1e6 to 1e10.</summary>
    public required double BulkModulusPa { get; init; }

    /// <summary>The divider. Names of sections are unique in the whole plant.</summary>
    public required DividerDescription Divider { get; init; }
}

namespace LubeController.Plant.Description;

/// <summary>The lubricant. It is a label only: no flow loss is computed from it.</summary>
public sealed record LubricantDescription
{
    /// <summary>Grease or oil.</summary>
    public LubricantKind Kind { get; init; } = LubricantKind.Grease;

    /// <summary>A name for reports, for instance <c>NLGI 1</c> or <c>ISO VG 220</c>; not empty.</summary>
    public required string Name { get; init; }
}

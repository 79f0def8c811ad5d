namespace LubeController.Analysis.Wiring;

/// <summary>What is asked of a wiring matrix.</summary>
public sealed record WiringOptions
{
    /// <summary>The plant file.</summary>
    public required string PlantFile { get; init; }

    /// <summary>A settings file; with it, alarms that those settings cannot raise are left out. Null for every alarm.</summary>
    public string? SettingsFile { get; init; }

    /// <summary>Where to write it as CSV, or null.</summary>
    public string? CsvFile { get; init; }

    /// <summary>Where to write it as HTML, or null.</summary>
    public string? HtmlFile { get; init; }
}

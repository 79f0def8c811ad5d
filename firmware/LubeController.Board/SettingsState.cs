namespace LubeController.Board;

/// <summary>What the banks of settings hold.</summary>
public enum SettingsState
{
    /// <summary>Nothing was ever stored: the settings compiled in are used.</summary>
    NeverStored = 0,

    /// <summary>Settings that were read.</summary>
    Stored = 1,

    /// <summary>Settings of a version or with a field that nobody knows here.</summary>
    Refused = 2,

    /// <summary>Settings were stored, and neither bank is whole.</summary>
    Lost = 3,
}

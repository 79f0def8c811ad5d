using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>The deployed core with its inputs, outputs and clock, under the settings explored or under ones that it refuses.</summary>
internal sealed class ExploredCore
{
    // No cycle switch, and a dose that is to be ended by one.
    private static readonly Settings Refused = MakeRefused();

    public ExploredCore(CoreSetup setup)
    {
        Setup = setup;
        Rule = setup.MakeRule?.Invoke();
        Core = new Controller(Inputs, Outputs, setup.Settings, Rule);
    }

    public CoreSetup Setup { get; }

    public Settings Settings => Setup.Settings;

    public Inputs Inputs { get; } = new();

    public Outputs Outputs { get; } = new();

    public IRestRule? Rule { get; }

    public Controller Core { get; }

    /// <summary>Power came just now: the first scan after it comes at once.</summary>
    public bool JustPoweredUp { get; set; }

    /// <summary>The settings in use are refused.</summary>
    public bool SettingsAreRefused { get; private set; }

    /// <summary>The clock, milliseconds since the state was entered.</summary>
    public uint NowMs { get; set; }

    /// <summary>One scan.</summary>
    /// <returns>The time that has passed for it, milliseconds.</returns>
    public int Scan(Inputs inputs)
    {
        Inputs.CopyFrom(inputs);
        int elapsedMs = JustPoweredUp ? 0 : Setup.StepMs;
        JustPoweredUp = false;
        NowMs += (uint)elapsedMs;
        Core.Scan(NowMs);
        return elapsedMs;
    }

    /// <summary>Power comes, and the core hears what the main loop found.</summary>
    public void PowerUp(PowerCut cut)
    {
        Core.PowerUp();
        if (cut == PowerCut.LoopFault)
            Core.NoteLogicFault();
        if (cut == PowerCut.BlockLost)
            Core.NoteStorageCorrupt();
        JustPoweredUp = true;
    }

    public void UseSettings(bool refused)
    {
        if (SettingsAreRefused == refused)
            return;
        SettingsAreRefused = refused;
        Core.UseSettings(refused ? Refused : Settings);
    }

    private static Settings MakeRefused()
    {
        var settings = new Settings();
        settings[SettingField.SwitchCount] = 0;
        return settings;
    }
}

using System;
using System.Collections.Generic;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>What a sweep goes through.</summary>
public sealed record PowerCutSetup
{
    /// <summary>The settings compiled in.</summary>
    public required Settings Settings { get; init; }

    /// <summary>Settings that come by every kind of write within an hour.</summary>
    public static Settings UsualSettings()
    {
        var settings = new Settings();
        settings[SettingField.RestMs] = 5 * 60 * 1000;
        settings[SettingField.LevelLowFitted] = 1;
        settings[SettingField.LevelEmptyFitted] = 1;
        return settings;
    }

    /// <summary>Makes the user's rest rule anew at every start; null for none.</summary>
    public Func<IRestRule>? MakeRule { get; init; }

    /// <summary>What is done to the board, in order of time.</summary>
    public required IReadOnlyList<PowerCutStep> Steps { get; init; }

    /// <summary>Length of the run, milliseconds.</summary>
    public required long DurationMs { get; init; }

    /// <summary>Blocks of the storage.</summary>
    public int BlockCount { get; init; } = 12;

    /// <summary>Bytes of a block.</summary>
    public int BlockLength { get; init; } = MemoryLayout.ShortestBlock;

    /// <summary>Most writes of a kind that are cut, the first ones; all by default.</summary>
    public int MostOfKind { get; init; } = int.MaxValue;

    /// <summary>Runs at a time; each cuts its share of the writes.</summary>
    public int Jobs { get; init; } = 1;

    /// <summary>Puts a layer between the main loop and the storage, such as one with a deliberate fault; null for none.</summary>
    public Func<IBlockStorage, IBlockStorage>? Layer { get; init; }
}

using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Sensors;

namespace LubeController.Emulator.Tests.Platform;

/// <summary>A small plant with a shaft, and what is done to its board when.</summary>
internal sealed class BoardRig : IBenchDriver
{
    /// <summary>One second, us.</summary>
    public const long Second = 1_000_000;

    private readonly List<(long TimeUs, Action<Bench> What)> _actions = [];
    private int _next;

    private BoardRig(BenchSetup setup)
    {
        Bench = new Bench(setup, this);
    }

    public Bench Bench { get; }

    public Trace Trace => Bench.Trace;

    public long NextActionUs => _next < _actions.Count ? _actions[_next].TimeUs : long.MaxValue;

    /// <summary>A bench that runs for some seconds, quiet time skipped or not.</summary>
    public static BoardRig For(int seconds, bool skips, Func<BenchSetup, BenchSetup>? with = null, Action<Settings>? set = null)
    {
        var settings = new Settings();
        settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
        settings[SettingField.DoseRunMs] = 5_000;
        settings[SettingField.RestMs] = 60_000;
        settings[SettingField.ShaftFitted] = 1;
        settings[SettingField.ShaftPulsesPerRevolution] = 1;
        settings[SettingField.ShaftMaxPerMinute] = 6_000;
        settings[SettingField.RestFallbackMs] = 600_000;
        set?.Invoke(settings);
        var check = new SettingsCheck();
        if (!check.Accepts(settings, hasRule: false))
            throw new InvalidOperationException($"{SettingTable.Spec(check[0].Field).Name} {check[0].Value}: {check[0].Reason}");
        var setup = new BenchSetup { Plant = Plant(), Settings = settings, DurationUs = seconds * Second, SkipQuietTime = skips };
        return new BoardRig(with == null ? setup : with(setup));
    }

    public BoardRig At(double seconds, Action<Bench> what)
    {
        _actions.Add(((long)Math.Round(seconds * Second), what));
        return this;
    }

    public BoardRig Fault(double seconds, BoardFault kind, double? magnitude = null, double? second = null, string part = "") =>
        At(seconds, bench => bench.Platform.ApplyFault(kind, part, magnitude, second));

    public BoardRig Heal(double seconds, BoardFault kind) => At(seconds, bench => bench.Platform.HealFault(kind));

    public BoardRig Run()
    {
        Bench.Run();
        Bench.Platform.NoteFaultEffects();
        return this;
    }

    /// <summary>When a signal first became a value, us; -1 if it never did.</summary>
    public long First(string signal, double value, long fromUs = 0)
    {
        Signal found = Trace.Find(signal)!;
        int index = Enumerable.Range(0, found.Count).FirstOrDefault(point => found.TimeUs(point) >= fromUs && found.Value(point) == value, -1);
        return index < 0 ? -1 : found.TimeUs(index);
    }

    public double Value(string signal, double seconds) => Trace.Find(signal)!.ValueAt((long)(seconds * Second));

    public IEnumerable<string> Notes(string kind) => Trace.Events.Where(entry => entry.Kind == kind).Select(entry => entry.Text);

    public void Act(Bench bench)
    {
        while (NextActionUs <= bench.NowUs)
            _actions[_next++].What(bench);
    }

    public void AfterScan(Bench bench)
    {
    }

    private static PlantDescription Plant()
    {
        var divider = new DividerDescription
        {
            Sections = [.. Enumerable.Range(1, 3).Select(number => new SectionDescription { Name = $"{number}", VolumePerStrokeM3 = 0.2e-6, Outlets = SectionOutlets.Twin })],
        };
        return SmallPlant.With(divider) with
        {
            Shaft = new ShaftDescription { PulsesPerRevolution = 1, InitialSpeedRevPerS = 100, MinimumPulseWidthUs = 0 },
        };
    }
}

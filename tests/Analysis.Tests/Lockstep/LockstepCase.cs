using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Analysis.Lockstep;
using LubeController.Analysis.Specification;
using LubeController.Core;
using LubeController.Tests.Draws;
using DoseMode = LubeController.Core.DoseMode;
using PressureSwitchUse = LubeController.Core.PressureSwitchUse;
using RestMode = LubeController.Core.RestMode;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>Settings and inputs that are run in lockstep.</summary>
internal sealed record LockstepCase(SettingsValues Settings, IReadOnlyList<LockstepStep> Steps)
{
    /// <summary>Scans of all steps together.</summary>
    public int Scans => Steps.Sum(step => step.Scans);

    public override string ToString() =>
        $"{string.Join(", ", Changed())}\n{string.Join("\n", Steps.Select((step, index) => $"  {index}: {step}"))}";

    private IEnumerable<string> Changed() => Enumerable.Range(0, SettingField.Count)
        .Where(field => Settings[field] != SettingTable.Spec(field).Preset)
        .Select(field => $"{SettingTable.Spec(field).Name} {Settings[field]}");
}

/// <summary>
/// Generators of cases. Times are short and seldom a multiple of each other, so that many ends of times meet; inputs go on as
/// they were and one thing at a time is moved, so that doses are completed, switches fall silent, and alarms stand for a while.
/// </summary>
internal static class LockstepCases
{
    private enum Hand
    {
        Wait,
        Pulse,
        Train,
        Silence,
        Stroke,
        Press,
        Dose,
        Test,
        Stop,
        Level,
        Overload,
        Pressure,
        PressureSwitch,
        Supply,
        Running,
        Shaft,
        Cold,
        Late,
        Revolutions,
        Cut,
        Hide,
    }

    private sealed record Move(Hand Hand, int Argument, int ElapsedMs, int Scans);

    private static readonly Gen<int> Elapsed = Gen.Frequency((8, Gen.Const(10)), (2, Gen.Int[1, 25]), (1, Gen.Const(100)));

    private static readonly Gen<int> Scans = Gen.Frequency((5, Gen.Int[1, 6]), (4, Gen.Int[7, 40]), (2, Gen.Int[41, 140]));

    private static readonly Gen<Move> Moves =
        from hand in Gen.Frequency(
            (5, Gen.Const(Hand.Wait)), (3, Gen.Const(Hand.Silence)), (4, Gen.Const(Hand.Stroke)), (12, Gen.Const(Hand.Pulse)), (4, Gen.Const(Hand.Train)), (8, Gen.Const(Hand.Press)), (6, Gen.Const(Hand.Dose)), (1, Gen.Const(Hand.Test)),
            (3, Gen.Const(Hand.Stop)), (3, Gen.Const(Hand.Level)), (1, Gen.Const(Hand.Overload)), (5, Gen.Const(Hand.Pressure)), (3, Gen.Const(Hand.PressureSwitch)),
            (2, Gen.Const(Hand.Supply)), (2, Gen.Const(Hand.Running)), (3, Gen.Const(Hand.Shaft)), (1, Gen.Const(Hand.Cold)),
            (1, Gen.Const(Hand.Late)), (1, Gen.Const(Hand.Revolutions)), (2, Gen.Const(Hand.Cut)), (2, Gen.Const(Hand.Hide)))
        from argument in Gen.Int[0, 719]
        from elapsed in Elapsed
        from scans in Scans
        select new Move(hand, argument, elapsed, scans);

    /// <summary>Settings and some steps.</summary>
    public static readonly Gen<LockstepCase> Any =
        from settings in Generators.Settings(brief: true)
        from moves in Moves.Array[1, 40]
        select new LockstepCase(Repaired(settings), Played(moves));

    /// <summary>Sets right what the settings would be refused for, and leaves out what the specification leaves out.</summary>
    private static SettingsValues Repaired(int[] drawn)
    {
        int[] values = (int[])drawn.Clone();
        if (values[SettingField.DoseMode] == (int)DoseMode.Cycles)
            values[SettingField.SwitchCount] = System.Math.Max(1, values[SettingField.SwitchCount]);
        values[SettingField.DoseEndingSwitch] = System.Math.Clamp(values[SettingField.DoseEndingSwitch], 1, System.Math.Max(1, values[SettingField.SwitchCount]));
        if (values[SettingField.DoseMode] == (int)DoseMode.Pressure)
            Generators.FitDosesByPressure(values, leastMissingMs: 300);
        if (values[SettingField.RunDownMs] > 0)
            values[SettingField.RunDownMs] += values[SettingField.ShaftStandstillMs];
        if (values[SettingField.RestMode] is (int)RestMode.Shaft or (int)RestMode.Either)
            values[SettingField.ShaftFitted] = 1;
        if (values[SettingField.PressureTransmitterFitted] == 0 && values[SettingField.PressureSwitchUse] != (int)PressureSwitchUse.Reached)
            values[SettingField.PressureMissingMs] = 0;
        return LockstepSettings.Neutral(new SettingsValues(values));
    }

    private static LockstepStep[] Played(Move[] moves)
    {
        var inputs = new LockstepInputs();
        var steps = new List<LockstepStep>();
        foreach (Move move in moves)
        {
            inputs = Moved(inputs, move) with { Pressed = Buttons.None, ScanLate = move.Hand == Hand.Late || (inputs.ScanLate && move.Argument % 2 == 0) };
            if (move.Hand == Hand.Silence)
            {
                // Long enough for timeouts and retry pauses; then perhaps a dip of the supply.
                steps.Add(new LockstepStep(inputs, 10, 30 + (move.Argument % 160)));
                if (move.Argument % 3 != 1)
                    steps.Add(new LockstepStep(inputs with { SupplyMv = 18_000 }, 10, 10 + move.Scans));
                steps.Add(new LockstepStep(inputs, 10, 1 + (move.Scans / 4)));
            }
            else if (move.Hand == Hand.Stroke)
            {
                inputs = Stroke(steps, inputs, 2 + (move.Argument % 90), 1 + (move.Scans % 60), 1 + (move.Argument % 80));
            }
            else if (move.Hand == Hand.Train)
            {
                // One switch moves on and on while others are still, most often in a dose; or it chatters.
                if (move.Argument % 3 != 0)
                    steps.Add(new LockstepStep(inputs with { Pressed = Buttons.DoseNow }, 10, 4));
                for (int edge = 0; edge < 4 + (move.Argument % 7); edge++)
                {
                    inputs = inputs with { CycleSwitches = inputs.CycleSwitches ^ Pulsed(move.Argument) };
                    steps.Add(new LockstepStep(inputs, 10, move.Argument / 16 % 3 == 0 ? 1 + (move.Scans % 6) : 3 + (move.Scans % 16)));
                }
            }
            else if (move.Hand == Hand.Cut && move.Argument % 4 == 3)
            {
                // Power that comes and goes, often just at the end of a save interval or of a window.
                for (int cut = 0; cut < 2 + (move.Argument % 3); cut++)
                    steps.Add(new LockstepStep(inputs, 10, 151 + (move.Argument / 4 % 12 * 10), LockstepDeed.PowerCut));
            }
            else if (move.Hand == Hand.Press)
            {
                int held = move.Argument % 6 == 4 && move.Argument % 5 == 0 ? 160 : move.Argument % 4 == 0 ? move.Scans : 4;
                steps.Add(new LockstepStep(inputs with { Pressed = (Buttons)(1 << (move.Argument % 6)) }, move.ElapsedMs, held));
                if (move.Argument / 6 % 4 != 0)
                    steps.Add(new LockstepStep(inputs, move.ElapsedMs, 4));
            }
            else if (move.Hand == Hand.Dose)
            {
                steps.Add(new LockstepStep(inputs with { Pressed = Buttons.DoseNow }, 10, 4));
                for (int stroke = 0; move.Argument % 3 == 0 && stroke < 2; stroke++)
                    inputs = Stroke(steps, inputs, 2 + (move.Scans % 20), 30 + (move.Argument % 20), 1 + (move.Argument % 80));
                if (move.Argument % 3 != 0)
                    inputs = Pulses(steps, inputs, move);
            }
            else if (move.Hand == Hand.Test)
            {
                steps.Add(new LockstepStep(inputs with { Stop = true }, 10, 2));
                inputs = inputs with { Stop = false };
                steps.Add(new LockstepStep(inputs, 10, 1 + (move.Scans / 4)));
                steps.Add(new LockstepStep(inputs with { Pressed = Buttons.OutputTest }, 10, 4 + move.Scans));
            }
            else if (move.Hand == Hand.Pulse)
            {
                steps.Add(new LockstepStep(inputs, move.ElapsedMs, 1 + (move.Scans % 12)));
                inputs = inputs with { CycleSwitches = inputs.CycleSwitches ^ Pulsed(move.Argument) };
                steps.Add(new LockstepStep(inputs, move.ElapsedMs, 4));
            }
            else
            {
                steps.Add(StepOf(inputs, move));
            }
        }

        return [.. steps];
    }

    /// <summary>The line's pressure rises and falls, as in a pressure cycle.</summary>
    private static LockstepInputs Stroke(List<LockstepStep> steps, LockstepInputs inputs, int scansBefore, int scansUp, int scansAfter)
    {
        LockstepInputs up = inputs with { PressureMbar = 6_000, PressureSwitch = true };
        LockstepInputs down = inputs with { PressureMbar = 0, PressureSwitch = false };
        steps.Add(new LockstepStep(down, 10, scansBefore));
        steps.Add(new LockstepStep(up, 10, scansUp));
        steps.Add(new LockstepStep(down, 10, scansAfter));
        return down;
    }

    /// <summary>The pulses of a dose, at times more than it takes: the first of those is a run-on pulse.</summary>
    private static LockstepInputs Pulses(List<LockstepStep> steps, LockstepInputs inputs, Move move)
    {
        for (int edge = 0; edge < 2 * (1 + (move.Argument % 6)); edge++)
        {
            steps.Add(new LockstepStep(inputs, 10, 4 + (move.Scans % 12)));
            inputs = inputs with { CycleSwitches = inputs.CycleSwitches ^ 1 };
        }

        steps.Add(new LockstepStep(inputs, 10, 4));
        return inputs;
    }

    /// <summary>Most often the first switch, seldom another, or several at once.</summary>
    private static int Pulsed(int argument) => ((int[])[2, 1, 1, 1, 1, 1, 1, 1, 2, 4, 3, 1, 1, 1, 6, 1])[argument % 16];

    private static LockstepInputs Moved(LockstepInputs inputs, Move move)
    {
        int argument = move.Argument;
        return move.Hand switch
        {
            Hand.Pulse => inputs with { CycleSwitches = inputs.CycleSwitches ^ Pulsed(argument) },
            Hand.Stop => inputs with { Stop = !inputs.Stop },
            Hand.Level when argument % 3 == 0 => inputs with { LevelEmpty = !inputs.LevelEmpty },
            Hand.Level => inputs with { LevelLow = !inputs.LevelLow },
            Hand.Overload => inputs with { PumpOverload = !inputs.PumpOverload },
            Hand.Pressure => inputs with { PressureMbar = ((int[])[0, 6_000, 0, 6_000, 3_000, 9_001, 0, 13_000, -400, 6_000])[argument % 10] },
            Hand.PressureSwitch => inputs with { PressureSwitch = !inputs.PressureSwitch },
            Hand.Supply => inputs with { SupplyMv = ((int[])[24_000, 18_000, 19_500, 24_000])[argument % 4] },
            Hand.Running => inputs with { MachineRunning = !inputs.MachineRunning },
            Hand.Shaft => inputs with { ShaftPulses = argument % 3 == 0 ? 0 : 1, ShaftPulseAgeMs = argument % 2 },
            Hand.Cold => inputs with { TemperatureDeciC = ((int[])[200, -10, 10])[argument % 3] },
            Hand.Revolutions => inputs with { PumpRevolutions = argument % 2 },
            _ => inputs,
        };
    }

    private static LockstepStep StepOf(LockstepInputs inputs, Move move)
    {
        LockstepDeed deed = move.Hand switch
        {
            Hand.Cut => move.Argument % 6 == 0 ? LockstepDeed.CutByLogicFault : move.Argument % 6 == 1 ? LockstepDeed.CutWithCorruptStorage : LockstepDeed.PowerCut,
            Hand.Hide => LockstepDeed.Shelve + (move.Argument % 4),
            _ => LockstepDeed.None,
        };
        return new LockstepStep(inputs, move.ElapsedMs, move.Scans, deed, move.Argument / 4 % Core.AlarmTable.Count, 1 + (move.Argument * 2));
    }
}

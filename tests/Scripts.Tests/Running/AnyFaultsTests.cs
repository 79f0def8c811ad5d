using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using CsCheck;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Plant;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;
using LubeController.Plant.Pistons;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Running;

/// <summary>
/// Any faults at any times on each plant that ships: no exception, the volumes balance, and once all are healed and the
/// reservoir is filled the plant works as it did, within a bound.
/// </summary>
[Trait("Run", "Long")]
public sealed class AnyFaultsTests
{
    private const long TroubleUs = 400_000_000;

    // A bound on coming back: air that was drawn is driven out by the line's fillings, of a long line almost as by a piston, and
    // a few cycles more put the pistons in their order.
    private const int FillingsToSettle = 2;
    private const int CyclesToSettle = 10;
    private const int CyclesMeasured = 10;

    // A secondary divider may stand anywhere in its cycle when the master has gone through its own: among so many cycles of
    // the master a stroke more or less of it is no more than half of the tolerance.
    private const int CyclesMeasuredWithSecondaries = 100;

    // Vented, most of what was pumped goes back, and takes air with it only from near the valve.
    private const int FillingsToSettleVented = 6;
    private const long VentUs = 60_000_000;
    private const long MostUsPerCycle = 600_000_000;

    /// <summary>One fault: its kind, which part, how bad, when it comes and how long it stays; sudden or growing.</summary>
    private static readonly Gen<(int Kind, double Part, double HowBad, long FromUs, long ForUs, bool Grows)[]> Faults = Gen.Select(
        Gen.Int[0, 9_999],
        Gen.Double[0, 1],
        Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[0, 1]),
        Gen.Long[0, TroubleUs],
        Gen.OneOf(Gen.Const(0L), Gen.Long[0, TroubleUs]),
        Gen.Bool).Array[2, 6];

    public static TheoryData<string> PlantFiles => new(
        Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "plants"), "*.plant.yaml").Select(path => Path.GetFileName(path)).Where(name => name.Split('.').Length == 3).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(PlantFiles))]
    public void After_any_faults_are_healed_a_plant_works_as_before(string file)
    {
        PlantDescription plant = Load(file);
        Measured healthy = Measure(new LubricationSystem(plant, 1));
        int effects = 0;
        int kinds = 0;
        Gen.Select(Faults, Gen.ULong, Gen.Long[0, 60_000_000]).Sample(
            (faults, seed, pumpOffUs) =>
            {
                var system = new LubricationSystem(plant, seed);
                kinds += Suffer(system, faults, pumpOffUs);
                Assert.InRange(system.Balance().RelativeError, 0, 1e-9);

                system.HealAllFaults();
                system.Refill(plant.Reservoir.ContentM3);
                effects += system.FaultLog.Entries.Count(entry => entry.TookEffect);
                AssertSoundSwitches(system);
                Measured after = Measure(system);

                Assert.Equal(healthy.CycleUs, after.CycleUs, healthy.CycleUs * 0.02);
                // How the pump's strokes fall on the pistons' decides which of ten cycles has the highest peak, and how high it is.
                Assert.Equal(healthy.PeakPa, after.PeakPa, healthy.PeakPa * 0.05);
                Assert.All(healthy.OutletM3.Zip(after.OutletM3), pair => Assert.Equal(pair.First, pair.Second, pair.First * 0.01));
                Assert.Equal(plant.Injectors.Count > 0 ? 0 : 1, system.Waves);
                Assert.InRange(system.Balance().RelativeError, 0, 1e-9);
            },
            iter: plant.Secondaries.Count > 0 ? 5 : 8,
            threads: 1);

        Assert.True(kinds > 6 && effects > 2, $"{kinds} faults, {effects} of them effective: too few to show anything");
    }

    /// <summary>Applies, grows and heals as drawn, with the pump now on, now off.</summary>
    /// <returns>How many faults came.</returns>
    private static int Suffer(LubricationSystem system, (int Kind, double Part, double HowBad, long FromUs, long ForUs, bool Grows)[] faults, long pumpOffUs)
    {
        var todo = new PriorityQueue<Action, (long, int)>();
        int count = 0;
        int order = 0;
        Fault[] possible = [.. FaultCatalogue.All.Where(fault => FaultCatalogue.PartNames(fault, system.Description).Count > 0)];
        foreach ((int kind, double which, double howBad, long fromUs, long forUs, bool grows) in faults)
        {
            Fault fault = possible[kind % possible.Length];
            IReadOnlyList<string> parts = FaultCatalogue.PartNames(fault, system.Description);
            count++;
            string part = parts[Math.Min((int)(which * parts.Count), parts.Count - 1)];
            double? written = fault.Parameter is { } parameter ? Between(parameter, howBad) : null;
            bool gradual = grows && fault.Gradual;
            At(fromUs, () => system.ApplyFault(fault, part, gradual ? fault.Parameter!.Harmless : written));
            for (int step = 1; gradual && step <= 8; step++)
            {
                double value = fault.Parameter!.Harmless!.Value + ((written!.Value - fault.Parameter.Harmless.Value) * step / 8);
                At(fromUs + (step * 3_000_000L), () => system.AdjustFault(fault, part, value));
            }

            At(fromUs + forUs, () => system.HealFault(fault, part));
        }

        At(0, () => Run(system, true));
        At(100_000_000, () => Run(system, false));
        At(100_000_000 + pumpOffUs, () => Run(system, true));
        while (todo.TryDequeue(out Action? act, out (long TimeUs, int) due) && due.TimeUs <= TroubleUs)
        {
            system.AdvanceTo(due.TimeUs);
            act();
            Assert.InRange(system.Balance().RelativeError, 0, 1e-9);
        }

        system.AdvanceTo(TroubleUs);
        return count;

        void At(long timeUs, Action act) => todo.Enqueue(act, (timeUs, order++));
    }

    /// <summary>From harmless (or the default) at 0 to the worst at 1; times stay near their default, or a run would never end.</summary>
    private static double Between(FaultParameter parameter, double howBad)
    {
        if (parameter.Unit == "s")
            return parameter.Default * (0.5 + howBad);
        double harmless = parameter.Harmless ?? parameter.Default;
        double worst = Math.Abs(parameter.Default - parameter.Minimum) <= Math.Abs(harmless - parameter.Minimum) ? parameter.Minimum : parameter.Maximum;
        if (parameter.Unit == "m3")
            worst = Math.Min(worst, 1e-3);
        return harmless + ((worst - harmless) * howBad);
    }

    private static void AssertSoundSwitches(LubricationSystem system)
    {
        for (int index = 0; index < system.CycleSwitchCount; index++)
            Assert.Equal(system.CycleSwitchActuated(index) != (system.Description.CycleSwitches[index].Contact == SwitchContact.NormallyClosed), system.CycleSwitchOn(index));
    }

    // The vent valve is closed while the pump runs, as a controller drives it.
    private static void Run(LubricationSystem system, bool pump)
    {
        system.SetPumpContact(pump);
        system.SetVentValve(pump == (system.Description.VentValve?.NormallyOpen ?? true));
    }

    private static Measured Measure(LubricationSystem system) =>
        system.Description.Injectors.Count > 0 ? MeasureDoses(system) : MeasureCycles(system);

    /// <summary>Runs the pump until the plant has settled, then takes whole cycles, from one arrival of the first piston at L to another.</summary>
    private static Measured MeasureCycles(LubricationSystem system)
    {
        Run(system, true);
        int fillings = (int)(FillingsToSettle * WholeLineM3(system.Description) / system.FullCycleVolumeM3);
        Arrive(system, CyclesToSettle + fillings, out _);
        int cycles = system.Description.Secondaries.Count > 0 ? CyclesMeasuredWithSecondaries : CyclesMeasured;
        long from = system.NowUs;
        double[] before = Delivered(system);
        Arrive(system, cycles, out double peak);
        double[] given = [.. Delivered(system).Zip(before, (after, first) => (after - first) / cycles)];
        return new Measured((system.NowUs - from) / (double)cycles, peak, given);
    }

    /// <summary>Pressurises and vents until the plant has settled, then takes some doses: the time until every injector has discharged.</summary>
    private static Measured MeasureDoses(LubricationSystem system)
    {
        for (double pumpedM3 = 0; pumpedM3 < FillingsToSettleVented * WholeLineM3(system.Description);)
        {
            double before = system.PumpedM3;
            Dose(system, out _, out _);
            pumpedM3 += system.PumpedM3 - before;
        }

        double timeUs = 0;
        double peak = 0;
        double[] given = Delivered(system);
        for (int dose = 0; dose < CyclesMeasured; dose++)
        {
            Dose(system, out long us, out double pressure);
            timeUs += us;
            peak = Math.Max(peak, pressure);
        }

        return new Measured(timeUs / CyclesMeasured, peak, [.. Delivered(system).Zip(given, (after, first) => (after - first) / CyclesMeasured)]);
    }

    private static void Dose(LubricationSystem system, out long us, out double peakPa)
    {
        long start = system.NowUs;
        peakPa = 0;
        Run(system, true);
        while (Enumerable.Range(0, system.InjectorCount).Any(injector => system.InjectorDischarged(injector) < 1))
        {
            Assert.True(system.NextEventUs < start + MostUsPerCycle, $"not all injectors discharge within {MostUsPerCycle} us");
            system.AdvanceTo(system.NextEventUs);
            peakPa = Math.Max(peakPa, system.LinePressurePa);
        }

        us = system.NowUs - start;
        Run(system, false);
        system.AdvanceTo(system.NowUs + VentUs);
    }

    private static double WholeLineM3(PlantDescription plant) => plant.Line.VolumeM3
        + plant.Line.Segments.Sum(segment => Math.PI / 4 * segment.BoreM * segment.BoreM * segment.LengthM)
        + plant.Secondaries.Sum(secondary => secondary.VolumeM3);

    private static void Arrive(LubricationSystem system, int cycles, out double peakPa)
    {
        long target = system.Strokes(0, Side.L) + cycles;
        long latest = system.NowUs + (cycles * MostUsPerCycle);
        peakPa = 0;
        while (system.Strokes(0, Side.L) < target)
        {
            Assert.True(system.NextEventUs < latest, $"no {cycles} cycles within {latest} us: {system.Status}");
            system.AdvanceTo(system.NextEventUs);
            peakPa = Math.Max(peakPa, system.LinePressurePa);
        }
    }

    private static double[] Delivered(LubricationSystem system) => [.. Enumerable.Range(0, system.OutletCount).Select(system.OutletDeliveredM3)];

    private static PlantDescription Load(string file)
    {
        var problems = new ProblemList();
        PlantDescription? plant = PlantReader.Read(Path.Combine(Repository.Root, "hil-scripts", "plants", file), problems)?.Plant;
        Assert.Empty(problems.All);
        return plant!;
    }

    private sealed record Measured(double CycleUs, double PeakPa, double[] OutletM3);
}

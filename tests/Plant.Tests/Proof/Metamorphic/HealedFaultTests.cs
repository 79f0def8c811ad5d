using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using Xunit;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>
/// Whoever heals a fault gets the plant back that there was: within a bound its cycle time, what each point gets in a cycle
/// and its highest pressure are those of one that never failed.
/// </summary>
[Trait("Run", "Long")]
public sealed class HealedFaultTests(ITestOutputHelper output)
{
    private const double Bar = 1e5;

    private const double Cm3 = 1e-6;

    private const double FaultAtS = 30;

    // Whatever leaves no air behind is over once line and pistons have moved on by two cycles.
    private const double BoundS = 60;

    // Air that a suction drew in must be carried out with the lubricant: what remains falls as in a mixed vessel, by e for
    // each filling of the line. Ten fillings of 20 cm3 at 20 cm3/min.
    private const double BoundWithAirS = 600;

    // Both are averages over whole cycles of a plant with constant flow, so that only the error of the steps is left; the
    // peak is read where steps end.
    private const double Part = 1e-3;

    private const double PeakPart = 5e-3;

    public static TheoryData<string> EveryFaultOfTheHydraulics() => new(FaultsByThing.OfADividersHydraulics.Select(fault => fault.Name));

    [Fact]
    public void There_are_as_many_of_them_as_the_registry_has() =>
        Assert.InRange(EveryFaultOfTheHydraulics().Count, 22, FaultCatalogue.All.Count);

    [Theory]
    [MemberData(nameof(EveryFaultOfTheHydraulics))]
    public void A_healed_fault_leaves_the_plant_as_it_was(string name)
    {
        Fault fault = FaultCatalogue.Find(name)!;
        int differed = 0;
        int runs = 0;
        Gen.Select(TightPlants.Any, Gen.Double[0, 1], Gen.Int[0, 99], Gen.Double[5, 60]).Sample(
            (tight, magnitude, which, lastsS) =>
            {
                PlantDescription plant = Plant(tight);
                Cycles sound = Cycles.Take(After(plant, FaultAtS + BoundS, _ => { }), 300, 4);
                Assert.Equal(4, sound.Count);

                IReadOnlyList<string> parts = FaultCatalogue.PartNames(fault, plant);
                string part = parts[which % parts.Count];
                LubricationSystem system = After(plant, FaultAtS, _ => { });
                system.ApplyFault(fault, part, fault.Parameter is { } parameter ? Magnitude(parameter, magnitude) : null);
                Cycles during = Cycles.Within(system, lastsS);
                system.HealFault(fault, part);
                system.AdvanceTo(system.NowUs + (long)((fault == ReservoirFaults.SuctionAerated || fault == ReservoirFaults.Empty ? BoundWithAirS : BoundS) * 1e6));
                Cycles healed = Cycles.Take(system, 300, 4);

                Assert.Equal(4, healed.Count);
                Assert.Equal(sound.CycleS, healed.CycleS, sound.CycleS * Part);
                for (int outlet = 0; outlet < plant.Outlets.Count; outlet++)
                    Assert.Equal(sound.VolumesM3[outlet], healed.VolumesM3[outlet], sound.VolumesM3[outlet] * Part);
                Assert.Equal(sound.PeakPa, healed.PeakPa, sound.PeakPa * PeakPart);
                runs++;
                if (during.Count == 0 || Differs(during, sound))
                    differed++;
            },
            iter: 12,
            threads: 1);
        output.WriteLine($"{fault}: {differed} of {runs} runs differed while it lasted");
        Assert.True(runs == 12 && (differed > 0 || fault == ValveFaults.ReliefStuckClosed || fault == PumpFaults.ContactWelded), "It made no difference while it lasted.");
    }

    private static bool Differs(Cycles one, Cycles other) =>
        Math.Abs(one.CycleS - other.CycleS) > other.CycleS * 0.01
        || Math.Abs(one.PeakPa - other.PeakPa) > other.PeakPa * 0.01
        || Enumerable.Range(0, one.VolumesM3.Length).Any(outlet => Math.Abs((one.VolumesM3[outlet] / one.Count) - (other.VolumesM3[outlet] / other.Count)) > 0.01 * other.VolumesM3[outlet] / other.Count);

    private static LubricationSystem After(PlantDescription plant, double seconds, Action<LubricationSystem> act)
    {
        LubricationSystem system = plant.Running();
        act(system);
        system.AdvanceTo((long)(seconds * 1e6));
        return system;
    }

    // A flow of 20 cm3/min, a line of 20 cm3 behind a strainer, a valve that opens above all that a sound plant needs.
    private static PlantDescription Plant(PlantDescription tight) => tight with
    {
        Lubricant = ProofLubricants.Oil,
        TemperatureK = 303,
        Pump = new ConstantFlowPumpDescription { FlowM3PerS = 20 * Plants.Cm3PerMin },
        Line = tight.Line with { VolumeM3 = 10 * Cm3, Segments = [new LineSegmentDescription { LengthM = 0.5, BoreM = 5e-3 }], StrainerLossPa = 0.5 * Bar },
        Relief = new ReliefDescription { OpeningPressurePa = 150 * Bar, OverridePa = 10 * Bar },
    };

    private static double Magnitude(FaultParameter parameter, double part)
    {
        double magnitude = parameter.Default == 0 ? parameter.Minimum : parameter.Default * Math.Pow(10, (2 * part) - 1);
        return Math.Clamp(magnitude, parameter.Minimum, parameter.Maximum);
    }
}

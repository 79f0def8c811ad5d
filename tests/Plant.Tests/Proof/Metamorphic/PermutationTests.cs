using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>Whoever moves points about, together with the ports that feed them, moves their volumes about and nothing else.</summary>
[Trait("Run", "Long")]
public sealed class PermutationTests
{
    private const int Counted = 6;

    // Positions count as at the end within a millionth of a stroke; an edge is read at the whole microsecond behind it, in
    // which a piston takes at most 4e-12 m3.
    private const double TiePart = 2e-6;

    private const double ReadingM3 = 8e-12;

    [Fact]
    public void The_order_in_which_points_are_listed_means_nothing_to_the_bit() =>
        Gen.Select(TightPlants.WithCam, Gen.Int).Sample(
            (plant, shuffle) =>
            {
                PlantDescription worn = Scenarios.Sections(plant, section => section with { BypassM3PerSPa = 1e-15 });
                PlantDescription shuffled = worn with { Outlets = Shuffled(worn.Outlets, shuffle) };
                Dictionary<string, double> volumes = Volumes(worn);
                Assert.Equal(volumes, Volumes(shuffled));
                Assert.True(volumes.Values.Sum() > 0);
            },
            iter: 30);

    [Fact]
    public void Sections_in_another_order_give_their_points_the_same_volumes_a_cycle() =>
        Gen.Select(TightPlants.Any, Gen.Int).Sample(
            (plant, shuffle) =>
            {
                SectionDescription[] sections = Shuffled(plant.Divider.Sections, shuffle);
                PlantDescription permuted = plant with { Divider = plant.Divider with { Sections = sections } };

                Cycles one = Measure(plant);
                Cycles other = Measure(permuted);

                Assert.Equal(Counted, one.Count);
                Assert.Equal(Counted, other.Count);
                for (int outlet = 0; outlet < plant.Outlets.Count; outlet++)
                    Assert.Equal(one.VolumesM3[outlet], other.VolumesM3[outlet], (one.VolumesM3[outlet] * TiePart) + ReadingM3);

                // The pump brings the same; what the line holds at one switch's edge depends on who moves before and after.
                double stored = 2 * Math.Max(one.PeakPa, other.PeakPa) * TightPlants.ComplianceM3PerPa(plant);
                Assert.Equal(one.Seconds, other.Seconds, stored / ((ConstantFlowPumpDescription)plant.Pump).FlowM3PerS);
            },
            iter: 30);

    // The ring is twisted once: a section that is moved from the front to the back is mirrored.
    [Fact]
    public void A_ring_that_is_turned_by_some_sections_runs_as_before() =>
        Gen.Select(TightPlants.Any, Gen.Int[1, 5], Gen.Double[0, 3e-15]).Sample(
            (plant, by, bypass) =>
            {
                PlantDescription worn = Scenarios.Sections(plant, section => section with { BypassM3PerSPa = bypass });
                Cycles one = Measure(worn);
                Cycles other = Measure(Turned(worn, by % plant.Divider.Sections.Count));

                for (int outlet = 0; outlet < plant.Outlets.Count; outlet++)
                    Assert.Equal(one.VolumesM3[outlet], other.VolumesM3[outlet], (one.VolumesM3[outlet] * 1e-4) + ReadingM3);
                Assert.Equal(one.CycleS, other.CycleS, one.CycleS * 1e-4);
            },
            iter: 30);

    private static PlantDescription Turned(PlantDescription plant, int by)
    {
        IReadOnlyList<SectionDescription> sections = plant.Divider.Sections;
        var mirrored = sections.Take(by).Select(section => section.Name).ToHashSet();
        bool switchMirrored = mirrored.Contains(plant.CycleSwitches[0].Section);
        return plant with
        {
            Divider = plant.Divider with { Sections = [.. sections.Skip(by), .. sections.Take(by).Select(section => section with { InitialTravel = 1 - section.InitialTravel })] },
            Outlets = [.. plant.Outlets.Select(outlet => outlet with { Ports = [.. outlet.Ports.Select(port => mirrored.Contains(port.Section) ? port with { Side = Other(port.Side) } : port)] })],
            CycleSwitches = [.. plant.CycleSwitches.Select(cycle => switchMirrored ? cycle with { End = Other(cycle.End) } : cycle)],
        };
    }

    private static Side Other(Side side) => side == Side.L ? Side.R : Side.L;

    private static T[] Shuffled<T>(IReadOnlyList<T> items, int seed)
    {
        // A sort by a hash of seed and place is a shuffle that depends on the seed alone.
        static uint Hash(int seed, int place)
        {
            unchecked
            {
                uint h = ((uint)seed * 2654435761u) ^ ((uint)place * 2246822519u);
                h ^= h >> 15;
                h *= 3266489917u;
                return h ^ (h >> 13);
            }
        }

        return [.. Enumerable.Range(0, items.Count).OrderBy(place => Hash(seed, place)).Select(place => items[place])];
    }

    private static Cycles Measure(PlantDescription plant)
    {
        LubricationSystem system = plant.Running();
        system.AdvanceTo(30_000_000);
        return Cycles.Take(system, 600, Counted);
    }

    private static Dictionary<string, double> Volumes(PlantDescription plant)
    {
        LubricationSystem system = plant.Running();
        system.AdvanceTo(60_000_000);
        return Enumerable.Range(0, system.OutletCount).ToDictionary(outlet => plant.Outlets[outlet].Name, system.OutletDeliveredM3);
    }
}

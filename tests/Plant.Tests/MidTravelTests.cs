using System.Linq;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class MidTravelTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(12)]
    public void With_every_piston_in_mid_travel_the_divider_is_hydraulically_locked(int sections)
    {
        LubricationSystem system = Plants.Twin(sections).Starting([.. Enumerable.Repeat(0.3, sections)]).Running();
        system.AdvanceTo(600_000_000);

        Assert.Equal(DividerState.HydraulicallyLocked, system.Status.State);
        Assert.Equal(0, system.DisplacedM3);
        Assert.Equal((200 * Plants.Bar) + 20, system.LinePressurePa, 0.1);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(12)]
    public void Land_clearance_lets_it_creep_to_an_end_and_restart(int sections)
    {
        PlantDescription plant = Plants.Twin(sections).Starting([.. Enumerable.Range(0, sections).Select(i => 0.2 + (0.05 * i))]);
        var system = new LubricationSystem(plant with { Divider = plant.Divider with { LandClearanceFlowM3PerS = 1e-10 } }, 1);
        Assert.Equal(DividerState.Idle, system.Status.State);
        system.SetPumpContact(true);
        system.AdvanceTo(1_000_000);
        Assert.Equal(0, system.TotalStrokes);
        Assert.Equal(DividerState.Moving, system.Status.State);

        // 0.2 cm3 at 1e-10 m3/s take 2000 s.
        system.AdvanceTo(7_200_000_000);

        Assert.True(system.TotalStrokes > 100, system.Status.ToString());
        Assert.InRange(system.Balance().RelativeError, 0, 1e-9);
    }

    [Fact]
    public void Clearance_cannot_help_where_no_land_is_nearer_to_opening()
    {
        PlantDescription plant = Plants.Twin(3).Starting(0.5, 0.5, 0.5);
        LubricationSystem system = (plant with { Divider = plant.Divider with { LandClearanceFlowM3PerS = 1e-10 } }).Running();
        system.AdvanceTo(7_200_000_000);

        Assert.Equal(DividerState.HydraulicallyLocked, system.Status.State);
        Assert.Equal(0, system.DisplacedM3);
    }

    [Fact]
    public void A_creeping_piston_that_passes_the_middle_sends_its_successor_the_other_way()
    {
        // 3 is nearer to R: it sends 1 left, through the middle; 1 then sends 2 left instead of right.
        PlantDescription plant = Plants.Twin(3).Starting(0.51, 0.4, 0.9);
        LubricationSystem system = (plant with { Divider = plant.Divider with { LandClearanceFlowM3PerS = 1e-10 } }).Running();
        system.AdvanceTo(2_000_000);
        Assert.True(system.OutletFlowM3PerS(system.FindOutlet("2R")) > 0);
        double atMiddle = system.PistonTravel(0);
        system.AdvanceTo(30_000_000);

        Assert.InRange(atMiddle, 0.5, 0.51);
        Assert.InRange(system.PistonTravel(0), 0.4, 0.5);
        Assert.True(system.OutletFlowM3PerS(system.FindOutlet("2L")) > 0);
        Assert.Equal(0, system.OutletFlowM3PerS(system.FindOutlet("2R")));
    }

    [Fact]
    public void With_at_least_one_piston_at_an_end_any_start_restarts() =>
        Gen.Select(Gen.Int[3, 12], Gen.Double[0.01, 0.99].Array[12], Gen.Int[1, 4095], Gen.Int[0, 4095], Gen.Double[0.05, 0.5].Array[12])
            .Where((n, _, ends, _, _) => (ends & ((1 << n) - 1)) != 0)
            .Sample((n, travels, ends, right, volumes) =>
            {
                // Uneven volumes and needs: no two pistons leave in a tie.
                SectionDescription[] sections = [.. Enumerable.Range(0, n).Select(i => Plants.Section(i + 1, volumes[i] * Plants.Cm3) with
                {
                    InitialTravel = (ends & (1 << i)) == 0 ? travels[i] : (right >> i) & 1,
                    BreakawayPa = 5e5 + (i * 1e3),
                })];
                LubricationSystem system = Plants.Of(sections).Running();
                system.AdvanceTo(600_000_000);
                Assert.True(system.TotalStrokes > 30, system.Status.ToString());
                Assert.InRange(system.Balance().RelativeError, 0, 1e-9);
            });
}

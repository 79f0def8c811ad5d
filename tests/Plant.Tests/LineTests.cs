using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class LineTests
{
    [Fact]
    public void Pressure_climbs_at_flow_over_compliance_until_the_relief_valve_takes_the_flow_back_to_the_reservoir()
    {
        LubricationSystem system = Plants.Twin(3).Running();
        system.ApplyFault(DividerFaults.InletBlocked);

        system.AdvanceTo(1_000_000);
        Assert.Equal(140 * Plants.Bar, system.LinePressurePa, 1.0);
        Assert.Equal(0, system.RelievedM3);
        Assert.Equal(DividerState.Blocked, system.Status.State);
        Assert.True(system.Status.InletBlocked);

        system.AdvanceTo(61_428_571);
        // A valve without a stated override passes its rated 1e-6 m3/s at 100 Pa more: these 2e-7 at 20 Pa.
        Assert.Equal((200 * Plants.Bar) + 20, system.LinePressurePa, 0.1);
        Assert.Equal(12 * Plants.Cm3, system.RelievedM3, 1e-11);
        Assert.Equal(3e-3 - (0.2 * Plants.Cm3 * 200 / 140), system.ReservoirContentM3, 1e-12);
    }

    // Isothermal from 101 325 Pa: at 3 bar gauge air has given up 3e5/(3e5 + 101 325) of its volume (ideal gas law).
    [Theory]
    [InlineData(1e5)]
    [InlineData(3e5)]
    [InlineData(1e7)]
    public void Entrained_air_stores_what_an_ideal_gas_gives_up(double pressurePa)
    {
        const double air = 1 * Plants.Cm3;
        PlantDescription plant = Plants.Twin(3) with { Line = new LineDescription { VolumeM3 = 20 * Plants.Cm3, BulkModulusPa = 1.4e9, AirM3 = air } };
        var system = new LubricationSystem(plant, 1, stepScale: 0.01);
        system.SetPumpContact(true);
        system.ApplyFault(DividerFaults.InletBlocked);

        double stored = (20 * Plants.Cm3 / 1.4e9 * pressurePa) + (air * pressurePa / (pressurePa + 101_325));
        system.AdvanceTo((long)(stored / (0.2 * Plants.Cm3) * 1e6));

        Assert.Equal(pressurePa, system.LinePressurePa, 20.0);
    }

    [Fact]
    public void Between_its_steps_the_pressure_is_drawn_as_stored_volume_has_it_to_a_twentieth_of_a_bar()
    {
        const double air = 1 * Plants.Cm3;
        double worst = 0;
        for (double pressure = 1e3; pressure < 2e7; pressure *= 1.05)
        {
            PlantDescription plant = Plants.Twin(3) with { Line = new LineDescription { VolumeM3 = 20 * Plants.Cm3, BulkModulusPa = 1.4e9, AirM3 = air } };
            LubricationSystem system = plant.Running();
            system.ApplyFault(DividerFaults.InletBlocked);
            double exact = (20 * Plants.Cm3 / 1.4e9 * pressure) + (air * pressure / (pressure + 101_325));
            system.AdvanceTo((long)(exact / (0.2 * Plants.Cm3) * 1e6));
            double reached = system.LinePressurePa;
            worst = System.Math.Max(worst, System.Math.Abs(reached - pressure));
        }

        Assert.InRange(worst, 10, 5000);
    }

    [Fact]
    public void Pressure_stands_while_nothing_flows()
    {
        LubricationSystem system = Plants.Twin(3).Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(500_000);
        system.SetPumpContact(false);
        double stands = system.LinePressurePa;

        system.AdvanceTo(86_400_000_000);

        Assert.Equal(stands, system.LinePressurePa);
        Assert.Equal(70 * Plants.Bar, stands, 1);
    }
}

using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class PlantCheckTests
{
    private static readonly PlantDescription Sound = Plants.Twin(4)
        .WithSwitch(new CycleSwitchDescription { Name = "s", Section = "1" })
        with
    {
        Pump = new CamPumpDescription { PistonBoreM = 6e-3, StrokeM = 4e-3, SpeedRevPerS = 1 },
        PressureSwitch = new PressureSwitchDescription { TripPa = 100 * Plants.Bar, ResetPa = 50 * Plants.Bar },
        Shaft = new ShaftDescription { InitialSpeedRevPerS = 1 },
    };

    public static TheoryData<string, string> Refused()
    {
        var data = new TheoryData<string, string>();
        foreach ((string path, string value, _) in Cases())
            data.Add(path, value);
        return data;
    }

    [Fact]
    public void A_sound_plant_has_no_findings() => Assert.Empty(PlantCheck.Of(Sound));

    [Theory]
    [MemberData(nameof(Refused))]
    public void Each_refusal_names_field_value_and_what_is_accepted(string path, string value)
    {
        (_, _, PlantDescription plant) = Cases().Single(c => c.Path == path && c.Value == value);

        IReadOnlyList<PlantFinding> refusals = PlantCheck.Refusals(plant);

        PlantFinding refusal = Assert.Single(refusals, r => r.Path == path);
        Assert.Equal(value, refusal.Value);
        Assert.NotEmpty(refusal.Accepted);
        string message = Assert.Throws<ArgumentException>(() => new LubricationSystem(plant, 1)).Message;
        Assert.Contains($"{path} = {value}: accepted is {refusal.Accepted}", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_relief_valve_that_opens_below_a_need_is_a_warning_for_each_port_that_it_leaves_dead()
    {
        OutletDescription[] outlets = [.. Sound.Outlets.Select(o => o.Name == "2R" ? o with { BackPressurePa = 250 * Plants.Bar } : o)];

        PlantFinding warning = Assert.Single(PlantCheck.Of(Sound with { Outlets = outlets }));

        Assert.False(warning.IsRefusal);
        Assert.Equal("Relief.OpeningPressurePa", warning.Path);
        Assert.Contains("2R", warning.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Sixty_four_sections_are_accepted_and_run()
    {
        LubricationSystem system = Plants.Twin(64).Running();
        Assert.Equal(200, system.StrokesInOrder(200).Count);
    }

    private static IEnumerable<(string Path, string Value, PlantDescription Plant)> Cases()
    {
        yield return ("Name", "''", Sound with { Name = " " });
        yield return ("Lubricant.Name", "''", Sound with { Lubricant = Sound.Lubricant with { Name = "" } });
        yield return ("Reservoir.CapacityM3", "NaN", Sound with { Reservoir = Sound.Reservoir with { CapacityM3 = double.NaN } });
        yield return ("Reservoir.ContentM3", "0.005", Sound with { Reservoir = Sound.Reservoir with { ContentM3 = 5e-3 } });
        yield return ("Reservoir.EmptyLevelM3", "0.002", Sound with { Reservoir = Sound.Reservoir with { EmptyLevelM3 = 2e-3 } });
        yield return ("Reservoir.LowLevelM3", "-1", Sound with { Reservoir = Sound.Reservoir with { LowLevelM3 = -1 } });
        yield return ("Reservoir.LevelHysteresisM3", "1", Sound with { Reservoir = Sound.Reservoir with { LevelHysteresisM3 = 1 } });
        CamPumpDescription cam = (CamPumpDescription)Sound.Pump;
        yield return ("Pump.PistonBoreM", "6", Sound with { Pump = cam with { PistonBoreM = 6 } });
        yield return ("Pump.StrokeM", "0", Sound with { Pump = cam with { StrokeM = 0 } });
        yield return ("Pump.SpeedRevPerS", "0", Sound with { Pump = cam with { SpeedRevPerS = 0 } });
        yield return ("Pump.VolumetricEfficiency", "1.1", Sound with { Pump = cam with { VolumetricEfficiency = 1.1 } });
        yield return ("Pump.DeliverySegments", "65", Sound with { Pump = cam with { DeliverySegments = 65 } });
        yield return ("Pump.InitialAngle", "1", Sound with { Pump = cam with { InitialAngle = 1 } });
        yield return ("Pump.FlowM3PerS", "0", Sound with { Pump = new ConstantFlowPumpDescription { FlowM3PerS = 0 } });
        yield return ("Line.VolumeM3", "0", Sound with { Line = Sound.Line with { VolumeM3 = 0 } });
        yield return ("Line.BulkModulusPa", "1E+12", Sound with { Line = Sound.Line with { BulkModulusPa = 1e12 } });
        yield return ("Line.AirM3", "1", Sound with { Line = Sound.Line with { AirM3 = 1 } });
        yield return ("Relief.OpeningPressurePa", "0", Sound with { Relief = new ReliefDescription { OpeningPressurePa = 0 } });
        yield return ("Divider.Sections", "2", Plants.Twin(2));
        yield return ("Divider.Sections", "65", Plants.Twin(65));
        yield return ("Divider.Sections[1].Name", "'1'", Change(s => s.Name == "2" ? s with { Name = "1" } : s));
        yield return ("Divider.Sections[2].VolumePerStrokeM3", "-1", Change(s => s.Name == "3" ? s with { VolumePerStrokeM3 = -1 } : s));
        yield return ("Divider.Sections[2].BreakawayPa", "-1", Change(s => s.Name == "3" ? s with { BreakawayPa = -1 } : s));
        yield return ("Divider.Sections[0].InitialTravel", "1.5", Change(s => s.Name == "1" ? s with { InitialTravel = 1.5 } : s));
        yield return ("Divider.Sections[0].FlowShare", "0", Change(s => s.Name == "1" ? s with { FlowShare = 0 } : s));
        yield return ("Divider.Sections[3].Outlets", "7", Change(s => s.Name == "4" ? s with { Outlets = (SectionOutlets)7 } : s));
        yield return ("Divider.Joins[0]", "'1' with '3'", Joined(new JoinDescription("1", "3", Side.L)));
        yield return ("Divider.Joins[0]", "'1' with '4'", Joined(new JoinDescription("1", "4", Side.L)));
        yield return ("Divider.Joins[0]", "'2' with '2'", Joined(new JoinDescription("2", "2", Side.R)));
        yield return ("Divider.Joins[0].FirstSection", "'x'", Joined(new JoinDescription("x", "2", Side.L)));
        yield return ("Divider.Joins[0].SecondSection", "'y'", Joined(new JoinDescription("1", "y", Side.L)));
        yield return ("Divider.Joins[0].Side", "5", Joined(new JoinDescription("1", "2", (Side)5)));
        yield return ("Divider.StrokeFlowLimitM3PerS", "1", Sound with { Divider = Sound.Divider with { StrokeFlowLimitM3PerS = 1 } });
        yield return ("Divider.LandClearanceFlowM3PerS", "0.001", Sound with { Divider = Sound.Divider with { LandClearanceFlowM3PerS = 1e-3 } });
        yield return ("Outlets", "no outlet at port 4R", Sound with { Outlets = [.. Sound.Outlets.SkipLast(1)] });
        yield return ("Outlets[1].Name", "'1L'", Outlet(1, o => o with { Name = "1L" }));
        yield return ("Outlets[0].BackPressurePa", "-5", Outlet(0, o => o with { BackPressurePa = -5 }));
        yield return ("Outlets[0].Ports", "none", Outlet(0, o => o with { Ports = [] }));
        yield return ("Outlets[0].Ports[1]", "'2L'", Outlet(0, o => o with { Ports = [new("1", Side.L), new("2", Side.L)] }));
        yield return ("Outlets[0].Ports[0]", "'9L'", Outlet(0, o => o with { Ports = [new("9", Side.L)] }));
        yield return ("Outlets[1].Ports", "'2L'", Outlet(1, o => o with { Ports = [new("1", Side.L)] }));
        yield return ("CycleSwitches", "65", Sound with { CycleSwitches = [.. Enumerable.Range(0, 65).Select(i => new CycleSwitchDescription { Name = $"s{i}", Section = "1" })] });
        yield return ("CycleSwitches[1].Name", "'s'", Sound.WithSwitch(new CycleSwitchDescription { Name = "s", Section = "2" }));
        yield return ("CycleSwitches[1].Section", "'8'", Sound.WithSwitch(new CycleSwitchDescription { Name = "t", Section = "8" }));
        yield return ("CycleSwitches[1].TripTravel", "0", Sound.WithSwitch(new CycleSwitchDescription { Name = "t", Section = "1", TripTravel = 0 }));
        yield return ("CycleSwitches[1].Hysteresis", "0.95", Sound.WithSwitch(new CycleSwitchDescription { Name = "t", Section = "1", Hysteresis = 0.95 }));
        yield return ("PressureSwitch.TripPa", "0", Sound with { PressureSwitch = new PressureSwitchDescription { TripPa = 0, ResetPa = 0 } });
        yield return ("PressureSwitch.ResetPa", "2E+06", Sound with { PressureSwitch = new PressureSwitchDescription { TripPa = 1e6, ResetPa = 2e6 } });
        yield return ("Shaft.PulsesPerRevolution", "0", Sound with { Shaft = new ShaftDescription { PulsesPerRevolution = 0 } });
        yield return ("Shaft.InitialSpeedRevPerS", "-1", Sound with { Shaft = new ShaftDescription { InitialSpeedRevPerS = -1 } });
        yield return ("Shaft.Duty", "1", Sound with { Shaft = new ShaftDescription { Duty = 1 } });
        yield return ("Shaft.MinimumPulseWidthUs", "-1", Sound with { Shaft = new ShaftDescription { MinimumPulseWidthUs = -1 } });
        yield return ("TemperatureK", "20", Sound with { TemperatureK = 20 });
    }

    private static PlantDescription Change(Func<SectionDescription, SectionDescription> change) =>
        Sound with { Divider = Sound.Divider with { Sections = [.. Sound.Divider.Sections.Select(change)] } };

    private static PlantDescription Joined(JoinDescription join)
    {
        DividerDescription divider = Sound.Divider with { Joins = [join] };
        return Sound with { Divider = divider, Outlets = PortGroups.DefaultOutlets(divider) };
    }

    private static PlantDescription Outlet(int index, Func<OutletDescription, OutletDescription> change) =>
        Sound with { Outlets = [.. Sound.Outlets.Select((o, i) => i == index ? change(o) : o)] };
}

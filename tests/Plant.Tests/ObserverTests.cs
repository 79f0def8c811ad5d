using System;
using System.Collections.Generic;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class ObserverTests
{
    private static readonly PlantDescription Plant = Plants.Twin(4)
        .WithSwitch(new CycleSwitchDescription { Name = "s", Section = "2" })
        with
    {
        Pump = new CamPumpDescription { PistonBoreM = 6e-3, StrokeM = 8e-3, SpeedRevPerS = 0.7 },
        PressureSwitch = new PressureSwitchDescription { TripPa = 100 * Plants.Bar, ResetPa = 4 * Plants.Bar },
    };

    [Fact]
    public void Points_taken_only_where_an_event_says_so_draw_every_line_of_the_run()
    {
        var recorder = new Recorder();
        var system = new LubricationSystem(Plant, 1);
        recorder.Start(system);
        system.Observer = recorder;
        Drive(system);

        var again = new LubricationSystem(Plant, 1);
        long step = 0;
        Drive(again, () =>
        {
            // A microsecond of flow is what rounding an event's time up may be off by.
            Assert.Equal(recorder.Pressure.At(again.NowUs), again.LinePressurePa, 500.0);
            Assert.Equal(recorder.Content.At(again.NowUs), again.ReservoirContentM3, 1e-12);
            Assert.Equal(recorder.Relieved.At(again.NowUs), again.RelievedM3, 1e-12);
            Assert.Equal(recorder.Leaked.At(again.NowUs), again.LeakedM3, 1e-12);
            for (int i = 0; i < 4; i++)
                Assert.Equal(recorder.Travel[i].At(again.NowUs), again.PistonTravel(i), 6e-5);
            for (int i = 0; i < 8; i++)
                Assert.Equal(recorder.Delivered[i].At(again.NowUs), again.OutletDeliveredM3(i), 1e-11);
            Assert.Equal(recorder.SwitchAt(again.NowUs), again.CycleSwitchOn(0));
            step++;
        });
        Assert.True(step > 1000);
        Assert.True(again.RelievedM3 > 0 && again.LeakedM3 > 0 && again.TotalStrokes > 50);
    }

    [Fact]
    public void A_piston_that_goes_on_as_before_is_not_named()
    {
        var recorder = new Recorder();
        LubricationSystem system = Plants.Twin(6).Running();
        recorder.Start(system);
        system.Observer = recorder;
        system.AdvanceTo(60_000_000);

        Assert.Equal(60, system.TotalStrokes, 1.0);
        Assert.InRange(recorder.PistonPoints, 100, 160);
    }

    private static void Drive(LubricationSystem system, Action? look = null)
    {
        void To(long timeUs)
        {
            while (system.NowUs < timeUs)
            {
                system.AdvanceTo(Math.Min(timeUs, system.NowUs + 97_531));
                look?.Invoke();
            }
        }

        system.SetPumpContact(true);
        To(40_000_000);
        system.ApplyFault(OutletFaults.Blocked, "3R");
        To(60_000_000);
        system.ApplyFault(LineFaults.Leak, value: 1e-8);
        system.HealFault(OutletFaults.Blocked, "3R");
        To(90_000_000);
        system.SetPumpContact(false);
        To(140_000_000);
        system.SetPumpContact(true);
        system.ApplyFault(CycleSwitchFaults.Chattering, "s");
        To(160_000_000);
    }

    private sealed class Line
    {
        private readonly List<long> _times = [];
        private readonly List<double> _values = [];

        internal void Add(long timeUs, double value)
        {
            _times.Add(timeUs);
            _values.Add(value);
        }

        internal double At(long timeUs)
        {
            int i = _times.Count - 1;
            while (_times[i] > timeUs)
                i--;
            if (i == _times.Count - 1 || _times[i] == timeUs)
                return _values[i];
            return _values[i] + ((_values[i + 1] - _values[i]) * (timeUs - _times[i]) / (_times[i + 1] - _times[i]));
        }
    }

    private sealed class Recorder : IPlantObserver
    {
        private readonly List<(long TimeUs, bool On)> _switch = [];

        internal Line Pressure { get; } = new();

        internal Line Content { get; } = new();

        internal Line Relieved { get; } = new();

        internal Line Leaked { get; } = new();

        internal Line[] Travel { get; } = [new(), new(), new(), new(), new(), new()];

        internal Line[] Delivered { get; } = [new(), new(), new(), new(), new(), new(), new(), new(), new(), new(), new(), new()];

        internal int PistonPoints { get; private set; }

        public void OnEvent(LubricationSystem system, long timeUs, in PlantChange change)
        {
            Assert.Equal(system.NowUs, timeUs);
            Record(system, timeUs, change);
        }

        internal void Start(LubricationSystem system) =>
            Record(system, 0, new PlantChange(PlantQuantities.All, ulong.MaxValue, UInt128.MaxValue));

        internal bool SwitchAt(long timeUs) => _switch.FindLast(s => s.TimeUs <= timeUs).On;

        private void Record(LubricationSystem system, long timeUs, PlantChange change)
        {
            void If(PlantQuantities quantity, Line line, double value)
            {
                if ((change.Quantities & quantity) != 0)
                    line.Add(timeUs, value);
            }

            If(PlantQuantities.LinePressure, Pressure, system.LinePressurePa);
            If(PlantQuantities.ReservoirContent, Content, system.ReservoirContentM3);
            If(PlantQuantities.Relieved, Relieved, system.RelievedM3);
            If(PlantQuantities.Leaked, Leaked, system.LeakedM3);
            if ((change.Quantities & PlantQuantities.CycleSwitches) != 0 && system.CycleSwitchCount > 0)
                _switch.Add((timeUs, system.CycleSwitchOn(0)));
            for (int i = 0; i < system.SectionCount; i++)
            {
                if (((change.Pistons >> i) & 1) == 0)
                    continue;
                Travel[i].Add(timeUs, system.PistonTravel(i));
                PistonPoints++;
            }

            for (int i = 0; i < system.OutletCount; i++)
            {
                if (((change.Outlets >> i) & 1) != 0)
                    Delivered[i].Add(timeUs, system.OutletDeliveredM3(i));
            }
        }
    }
}

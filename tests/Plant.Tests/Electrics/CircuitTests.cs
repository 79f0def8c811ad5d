using System;
using LubeController.Plant.Circuits;
using LubeController.Plant.Inputs;
using LubeController.Plant.Tests.Electrics.Spice;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

public sealed class CircuitTests
{
    private readonly Circuit _circuit = new();

    [Fact]
    public void A_divider_divides_and_its_currents_meet()
    {
        int top = _circuit.AddNode("top");
        int middle = _circuit.AddNode("middle");
        int source = _circuit.AddVoltageSource("source", top, Circuit.Ground, 24);
        int upper = _circuit.AddConductor("upper", top, middle, 1000);
        int lower = _circuit.AddConductor("lower", middle, Circuit.Ground, 2000);
        _circuit.Solve();

        Assert.Equal(16, _circuit.VoltageV(middle), 12);
        Assert.Equal(8e-3, _circuit.CurrentA(upper), 12);
        Assert.Equal(8e-3, _circuit.CurrentA(lower), 12);
        Assert.Equal(-8e-3, _circuit.CurrentA(source), 12);
        Assert.Equal(8, _circuit.AcrossV(upper), 12);
    }

    [Fact]
    public void A_resistance_inside_a_source_takes_its_share()
    {
        int top = _circuit.AddNode("top");
        _circuit.AddVoltageSource("source", top, Circuit.Ground, 24, 2);
        int load = _circuit.AddConductor("load", top, Circuit.Ground, 10);
        _circuit.Solve();
        Assert.Equal(20, _circuit.VoltageV(top), 12);

        _circuit.SetOhms(load, double.PositiveInfinity);
        _circuit.Solve();
        Assert.Equal(24, _circuit.VoltageV(top), 12);
        Assert.Equal(0, _circuit.CurrentA(load));
    }

    [Fact]
    public void A_node_behind_an_open_contact_floats_and_what_hangs_on_it_stands_at_zero_difference()
    {
        int top = _circuit.AddNode("top");
        int far = _circuit.AddNode("far");
        int end = _circuit.AddNode("end");
        _circuit.AddVoltageSource("source", top, Circuit.Ground, 24);
        int contact = _circuit.AddConductor("contact", top, far, double.PositiveInfinity);
        int hanging = _circuit.AddConductor("hanging", far, end, 100);
        _circuit.Solve();

        Assert.True(_circuit.IsFloating(far) && _circuit.IsFloating(end));
        Assert.True(double.IsNaN(_circuit.VoltageV(far)));
        Assert.True(double.IsNaN(_circuit.AcrossV(contact)));
        Assert.Equal(0, _circuit.AcrossV(hanging));
        Assert.False(_circuit.IsFloating(top));
    }

    [Fact]
    public void A_loop_that_floats_still_carries_its_current()
    {
        int plus = _circuit.AddNode("plus");
        int minus = _circuit.AddNode("minus");
        _circuit.AddVoltageSource("cell", plus, minus, 10);
        int load = _circuit.AddConductor("load", plus, minus, 100);
        _circuit.Solve();

        Assert.True(_circuit.IsFloating(plus));
        Assert.Equal(0.1, _circuit.CurrentA(load), 12);
        Assert.Equal(10, _circuit.AcrossV(load), 12);
    }

    [Fact]
    public void A_current_source_drives_its_current_and_is_refused_where_nothing_leads_back()
    {
        int top = _circuit.AddNode("top");
        _circuit.AddCurrentSource("drive", Circuit.Ground, top, 0.002);
        int load = _circuit.AddConductor("load", top, Circuit.Ground, 1000);
        _circuit.Solve();
        Assert.Equal(2, _circuit.VoltageV(top), 12);

        _circuit.SetOhms(load, double.PositiveInfinity);
        CircuitException refused = Assert.Throws<CircuitException>(_circuit.Solve);
        Assert.Contains("'drive'", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sources_without_resistance_in_a_ring_are_refused_by_name()
    {
        int top = _circuit.AddNode("top");
        _circuit.AddVoltageSource("first", top, Circuit.Ground, 24);
        _circuit.AddVoltageSource("second", top, Circuit.Ground, 24);
        CircuitException refused = Assert.Throws<CircuitException>(_circuit.Solve);
        Assert.Contains("'second'", refused.Message, StringComparison.Ordinal);

        _circuit.SetVoltage(1, 12, 1);
        _circuit.Solve();
        Assert.Equal(24, _circuit.VoltageV(top), 12);
        Assert.Equal(12, _circuit.CurrentA(1), 12);
    }

    [Fact]
    public void A_diode_passes_one_way()
    {
        int top = _circuit.AddNode("top");
        int middle = _circuit.AddNode("middle");
        int source = _circuit.AddVoltageSource("source", top, Circuit.Ground, 10);
        _circuit.AddConductor("load", top, middle, 99);
        int diode = _circuit.AddCurve("diode", middle, Circuit.Ground, Curves.Diode(0.7, 1));
        _circuit.Solve();
        Assert.Equal((10 - 0.7) / 100, _circuit.CurrentA(diode), 8);

        _circuit.SetVoltage(source, -10, 0);
        _circuit.Solve();
        Assert.Equal(-10, _circuit.VoltageV(middle), 5);
        Assert.InRange(_circuit.CurrentA(diode), -1.1e-8, 0);
    }

    [Fact]
    public void A_lamp_takes_its_rated_current_hot_and_ten_times_the_conductance_cold()
    {
        PiecewiseCurve lamp = Curves.Lamp(24, 4.8);
        Assert.Equal(0.2, lamp.CurrentA(24), 12);
        Assert.Equal(-0.2, lamp.CurrentA(-24), 12);
        Assert.Equal(10, lamp.CurrentA(0.1) / 0.1 / (lamp.CurrentA(24) / 24), 9);
    }

    [Fact]
    public void A_fuse_blows_beyond_its_rating_and_stays_blown()
    {
        int top = _circuit.AddNode("top");
        int behind = _circuit.AddNode("behind");
        _circuit.AddVoltageSource("source", top, Circuit.Ground, 10);
        int fuse = _circuit.AddFuse("fuse", top, behind, 1, 0.1);
        int load = _circuit.AddConductor("load", behind, Circuit.Ground, 9.91);
        _circuit.Solve();
        Assert.False(_circuit.IsBlown(fuse));

        _circuit.SetOhms(load, 9.89);
        _circuit.Solve();
        Assert.True(_circuit.IsBlown(fuse));
        Assert.Equal(0, _circuit.VoltageV(behind));

        _circuit.SetOhms(load, 1000);
        _circuit.Solve();
        Assert.Equal(0, _circuit.VoltageV(behind));
        _circuit.SetBlown(fuse, false);
        _circuit.Solve();
        Assert.InRange(_circuit.VoltageV(behind), 9.9, 10);
    }

    [Fact]
    public void Of_two_overloaded_fuses_in_a_row_only_the_weaker_blows()
    {
        int top = _circuit.AddNode("top");
        int between = _circuit.AddNode("between");
        int behind = _circuit.AddNode("behind");
        _circuit.AddVoltageSource("source", top, Circuit.Ground, 24);
        int strong = _circuit.AddFuse("strong", top, between, 2, 0.1);
        int weak = _circuit.AddFuse("weak", between, behind, 1, 0.1);
        _circuit.AddConductor("short", behind, Circuit.Ground, 0.1);
        _circuit.Solve();
        Assert.True(_circuit.IsBlown(weak));
        Assert.False(_circuit.IsBlown(strong));
    }

    [Fact]
    public void A_relay_pulls_in_and_drops_out_with_hysteresis()
    {
        int top = _circuit.AddNode("top");
        int lit = _circuit.AddNode("lit");
        int source = _circuit.AddVoltageSource("source", top, Circuit.Ground, 0);
        int coil = _circuit.AddCoil("K1", top, Circuit.Ground, 1000, 16, 4);
        _circuit.AddCoilContact(coil, "K1-14", top, lit, 0.1, closedWhenEnergised: true);
        _circuit.AddConductor("load", lit, Circuit.Ground, 100);

        double[] volts = [15.9, 16, 10, 4.1, 4, 15.9, -16];
        bool[] energised = [false, true, true, true, false, false, true];
        for (int step = 0; step < volts.Length; step++)
        {
            _circuit.SetVoltage(source, volts[step], 0);
            _circuit.Solve();
            Assert.Equal(energised[step], _circuit.IsEnergised(coil));
            Assert.Equal(energised[step], Math.Abs(_circuit.VoltageV(lit)) > 1);
        }
    }

    [Fact]
    public void A_relay_that_cuts_its_own_supply_buzzes_and_is_named()
    {
        int top = _circuit.AddNode("top");
        int fed = _circuit.AddNode("fed");
        _circuit.AddVoltageSource("source", top, Circuit.Ground, 24);
        int coil = _circuit.AddCoil("K7", fed, Circuit.Ground, 1000, 16, 4);
        _circuit.AddCoilContact(coil, "K7-12", top, fed, 0.1, closedWhenEnergised: false);

        CircuitException refused = Assert.Throws<CircuitException>(_circuit.Solve);
        Assert.Contains("'K7' buzzes", refused.Message, StringComparison.Ordinal);
        Assert.Equal("K7", _circuit.Buzzing);
    }

    [Fact]
    public void At_every_node_of_a_random_circuit_the_currents_sum_to_nothing()
    {
        int checkedNodes = 0;
        for (ulong seed = 1; seed <= 500; seed++)
        {
            Circuit circuit = new RandomCircuit(seed).Circuit;
            circuit.Solve();
            double[] sum = new double[circuit.NodeCount];
            double[] most = new double[circuit.NodeCount];
            for (int element = 0; element < circuit.ElementCount; element++)
            {
                (int a, int b) = circuit.EndsOf(element);
                double current = circuit.CurrentA(element);
                sum[a] -= current;
                sum[b] += current;
                most[a] = Math.Max(most[a], Math.Abs(current));
                most[b] = Math.Max(most[b], Math.Abs(current));
            }

            for (int node = 1; node < sum.Length; node++)
            {
                checkedNodes++;
                Assert.True(Math.Abs(sum[node]) <= (1e-9 * most[node]) + 1e-12, $"seed {seed}, node {node}: {sum[node]} A of {most[node]} A");
            }
        }

        Assert.True(checkedNodes > 3000);
    }

    [Fact]
    public void The_answer_does_not_depend_on_what_was_solved_before()
    {
        for (ulong seed = 1; seed <= 100; seed++)
        {
            Circuit fresh = new RandomCircuit(seed).Circuit;
            Circuit used = new RandomCircuit(seed).Circuit;
            used.SetVoltage(0, -7, 3);
            used.Solve();
            fresh.SetVoltage(0, 20, 0.1);
            used.SetVoltage(0, 20, 0.1);
            fresh.Solve();
            used.Solve();
            for (int node = 1; node < fresh.NodeCount; node++)
                Assert.Equal(BitConverter.DoubleToInt64Bits(fresh.VoltageV(node)), BitConverter.DoubleToInt64Bits(used.VoltageV(node)));
        }
    }

    [Fact]
    public void Solving_again_after_a_change_allocates_nothing()
    {
        Circuit circuit = new RandomCircuit(3).Circuit;
        circuit.Solve();
        circuit.SetVoltage(0, 12, 0.1);
        circuit.Solve();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int step = 0; step < 1000; step++)
        {
            circuit.SetVoltage(0, 10 + (step % 7), 0.1);
            circuit.Solve();
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void A_curve_must_rise_and_a_resistance_must_be_one()
    {
        Assert.Throws<ArgumentException>(() => new PiecewiseCurve(new CurvePoint(0, 0)));
        Assert.Throws<ArgumentException>(() => new PiecewiseCurve(new CurvePoint(0, 0), new CurvePoint(1, 0)));
        Assert.Throws<ArgumentException>(() => new PiecewiseCurve(new CurvePoint(0, 0), new CurvePoint(0, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => _circuit.AddConductor("none", 0, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => _circuit.AddConductor("nowhere", 0, 5, 1));
        Assert.Equal(2.3e-3, InputCurves.Of(InputType.Type3).CurrentA(10.5), 12);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 16)]
    [InlineData(2, 0)]
    [InlineData(3, 24)]
    [InlineData(4, 0)]
    [InlineData(5, 24)]
    public void Each_fault_of_a_wire_does_what_its_name_says(int fault, double expectedV)
    {
        int top = _circuit.AddNode("top");
        int end = _circuit.AddNode("end");
        int live = _circuit.AddNode("live");
        _circuit.AddVoltageSource("source", top, Circuit.Ground, 24);
        _circuit.AddVoltageSource("other", live, Circuit.Ground, 24, 0.1);
        var wire = new Wire(_circuit, "wire", fault is 3 or 5 ? Circuit.Ground : top, end, 1e-3);
        var neighbour = new Wire(_circuit, "neighbour", live, _circuit.AddNode("idle"), 1e-3);
        _circuit.AddConductor("load", end, Circuit.Ground, 2000);
        Action[] faults =
        [
            () => wire.SetBroken(true),
            () => wire.SetExtraOhms(1000),
            () => { wire.SetBroken(true); wire.SetToGround(0.1); },
            () => { wire.SetBroken(true); wire.SetToSupply(live, 0.1); },
            () => wire.SetBroken(true),
            () => { wire.SetBroken(true); wire.SetBridge(neighbour, 0.1); },
        ];
        faults[fault]();
        _circuit.Solve();
        Assert.Equal(expectedV, _circuit.VoltageV(end), 1);

        wire.SetBroken(false);
        wire.SetExtraOhms(0);
        wire.SetToGround(double.PositiveInfinity);
        wire.SetToSupply(live, double.PositiveInfinity);
        wire.SetBridge(neighbour, double.PositiveInfinity);
        _circuit.Solve();
        Assert.Equal(fault is 3 or 5 ? 0 : 24, _circuit.VoltageV(end), 3);
    }
}

using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The cells of the phase table whose event a hand or an input can cause in any phase.</summary>
public sealed class PhaseCellTests
{
    [Theory]
    [InlineData(Rest)]
    [InlineData(Dose)]
    [InlineData(RetryPause)]
    [InlineData(Prime)]
    [InlineData(Stopped)]
    [InlineData(Failed)]
    [InlineData(OutputTest)]
    public void Each_phase_can_be_reached(Phase phase) => Assert.Equal(phase, new Bench().To(phase).Phase);

    [Theory]
    [InlineData(Rest, Failed)]
    [InlineData(Dose, Failed)]
    [InlineData(RetryPause, Failed)]
    [InlineData(Prime, Failed)]
    [InlineData(Stopped, Stopped)]
    [InlineData(Failed, Failed)]
    [InlineData(OutputTest, Stopped)]
    public void An_interlock_alarm(Phase phase, Phase next)
    {
        Bench bench = new Bench().To(phase);
        bench.Witness(AlarmId.PumpOverload);

        Assert.Equal(next, bench.Phase);
        Assert.False(bench.Out.Pump);
    }

    [Theory]
    [InlineData(Rest, Rest)]
    [InlineData(Dose, Failed)]
    [InlineData(RetryPause, Failed)]
    [InlineData(Prime, Prime)]
    [InlineData(Stopped, Stopped)]
    [InlineData(Failed, Failed)]
    [InlineData(OutputTest, Stopped)]
    public void A_dose_ending_alarm(Phase phase, Phase next)
    {
        Bench bench = new Bench().To(phase);
        bench.Witness(AlarmId.LineNotVented);

        Assert.Equal(next, bench.Phase);
        Assert.True(bench.Alarm(AlarmId.LineNotVented).Stands);
    }

    [Theory]
    [InlineData(Rest)]
    [InlineData(Dose)]
    [InlineData(RetryPause)]
    [InlineData(Prime)]
    [InlineData(Stopped)]
    [InlineData(Failed)]
    [InlineData(OutputTest)]
    public void Stop_on_leads_to_stopped_from_everywhere(Phase phase)
    {
        Bench bench = new Bench().To(phase);
        bench.Stop(true);

        Assert.Equal(Stopped, bench.Scan().Phase);
        Assert.False(bench.Out.Pump);
    }

    [Theory]
    [InlineData(Rest, Rest, true)]
    [InlineData(Dose, Dose, true)]
    [InlineData(RetryPause, RetryPause, true)]
    [InlineData(Prime, Prime, true)]
    [InlineData(Stopped, Rest, false)]
    [InlineData(Failed, Failed, true)]
    [InlineData(OutputTest, OutputTest, true)]
    public void Start_pressed_with_stop_off(Phase phase, Phase next, bool refused) => Press(Buttons.Start, phase, next, refused);

    [Theory]
    [InlineData(Rest, Dose, false)]
    [InlineData(Dose, Dose, true)]
    [InlineData(RetryPause, RetryPause, true)]
    [InlineData(Prime, Prime, true)]
    [InlineData(Stopped, Stopped, true)]
    [InlineData(Failed, Failed, true)]
    [InlineData(OutputTest, OutputTest, true)]
    public void Dose_now_pressed(Phase phase, Phase next, bool refused) => Press(Buttons.DoseNow, phase, next, refused);

    [Theory]
    [InlineData(Rest, Prime, false)]
    [InlineData(Dose, Dose, true)]
    [InlineData(RetryPause, RetryPause, true)]
    [InlineData(Stopped, Prime, false)]
    [InlineData(Failed, Failed, true)] // an interlock stands here
    [InlineData(OutputTest, OutputTest, true)]
    public void Prime_pressed(Phase phase, Phase next, bool refused) => Press(Buttons.Prime, phase, next, refused);

    [Theory]
    [InlineData(Rest, Rest, true)]
    [InlineData(Dose, Dose, true)]
    [InlineData(RetryPause, RetryPause, true)]
    [InlineData(Prime, Prime, true)]
    [InlineData(Stopped, OutputTest, false)]
    [InlineData(Failed, Failed, true)]
    [InlineData(OutputTest, OutputTest, false)]
    public void Output_test_pressed(Phase phase, Phase next, bool refused) => Press(Buttons.OutputTest, phase, next, refused);

    [Theory]
    [InlineData(Rest, Rest)]
    [InlineData(Dose, Dose)]
    [InlineData(RetryPause, RetryPause)]
    [InlineData(Prime, Prime)]
    [InlineData(Stopped, Stopped)]
    [InlineData(Failed, Rest)]
    [InlineData(OutputTest, OutputTest)]
    public void Reset_pressed_with_no_pump_stopping_failure_left(Phase phase, Phase next) => Press(Buttons.Reset, phase, next, refused: false);

    [Theory]
    [InlineData(Rest, Rest)]
    [InlineData(Dose, Dose)]
    [InlineData(RetryPause, RetryPause)]
    [InlineData(Prime, Prime)]
    [InlineData(Stopped, Stopped)]
    [InlineData(Failed, Failed)]
    [InlineData(OutputTest, OutputTest)]
    public void Acknowledge_changes_no_phase(Phase phase, Phase next) => Press(Buttons.Acknowledge, phase, next, refused: false);

    [Theory]
    [InlineData(Rest, Rest, false)]
    [InlineData(Dose, Rest, true)]
    [InlineData(RetryPause, Rest, true)]
    [InlineData(Prime, Rest, false)]
    [InlineData(Stopped, Stopped, false)]
    [InlineData(Failed, Failed, false)]
    [InlineData(OutputTest, Stopped, false)]
    public void Power_up_after_a_cut(Phase phase, Phase next, bool pending)
    {
        Bench bench = new Bench().Dosed().To(phase);
        bench.Hold(Buttons.None);
        bench.Spec.PowerCut();

        Assert.Equal(next, bench.Scan().Phase);
        Assert.Equal(pending, bench.State.Dose.Pending);
        Assert.False(bench.Out.Pump);
    }

    [Theory]
    [InlineData(Stopped)]
    [InlineData(Failed)]
    public void Power_up_after_a_cut_in_prime_leads_where_prime_came_from(Phase from)
    {
        Bench bench = from == Failed ? FailedByDoseEnding() : new Bench().To(from);
        bench.To(Prime);
        Assert.Equal(Prime, bench.Phase);
        bench.Spec.PowerCut();

        Assert.Equal(from, bench.Scan().Phase);
    }

    [Fact]
    public void Reset_leaves_failed_alone_while_a_pump_stopping_failure_stands()
    {
        Bench bench = new();
        bench.Empty(true);
        bench.Scan();

        Assert.Equal(Failed, bench.Press(Buttons.Reset).Phase);
        bench.Empty(false);
        bench.Scan();
        Assert.Equal(Rest, bench.Press(Buttons.Reset).Phase);
    }

    [Fact]
    public void Start_in_stopped_leads_to_failed_while_a_pump_stopping_failure_stands()
    {
        Bench bench = new Bench().To(Stopped);
        bench.Witness(AlarmId.CycleSwitchFault);

        Assert.Equal(Failed, bench.Press(Buttons.Start).Phase);
    }

    [Fact]
    public void Start_in_stopped_is_refused_while_stop_is_on()
    {
        Bench bench = new();
        bench.Stop(true);
        bench.Scan();
        SpecOutputs pressed = bench.Press(Buttons.Start);

        Assert.Equal(Stopped, pressed.Phase);
        Assert.Equal(Buttons.Start, pressed.Refused);
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void Prime_in_stopped_is_refused_while_stop_is_on_or_an_interlock_stands(bool stop, bool interlock)
    {
        Bench bench = new Bench().To(Stopped);
        bench.Stop(stop);
        bench.Empty(interlock);
        bench.Scan();
        SpecOutputs pressed = bench.Press(Buttons.Prime);

        Assert.Equal(Stopped, pressed.Phase);
        Assert.Equal(Buttons.Prime, pressed.Refused);
    }

    [Fact]
    public void A_refused_press_in_prime_leaves_prime_as_it_is()
    {
        Bench bench = new Bench().To(Stopped).To(Prime);
        bench.Run(50);
        int before = bench.State.PhaseMs;
        Assert.Equal(Buttons.DoseNow, bench.Press(Buttons.DoseNow).Refused);
        Assert.Equal(before + 20, bench.State.PhaseMs);
        bench.Hold(Buttons.None);

        Assert.Equal(Stopped, bench.Scan().Phase);
    }

    [Fact]
    public void Prime_in_failed_stays_possible_under_a_dose_ending_alarm()
    {
        Bench bench = FailedByDoseEnding();
        bench.To(Prime);

        Assert.Equal(Prime, bench.Phase);
        Assert.True(bench.Out.Pump);
        bench.Hold(Buttons.None);
        Assert.Equal(Failed, bench.Scan().Phase);
    }

    [Fact]
    public void Output_test_in_stopped_is_refused_while_a_failure_stands()
    {
        Bench bench = new Bench().To(Stopped);
        bench.Witness(AlarmId.ScanOverrun);
        SpecOutputs pressed = bench.Press(Buttons.OutputTest);

        Assert.Equal(Stopped, pressed.Phase);
        Assert.Equal(Buttons.OutputTest, pressed.Refused);
    }

    [Fact]
    public void Output_test_ends_at_once_on_any_failure()
    {
        Bench bench = new Bench().To(OutputTest);

        Assert.Equal(Stopped, bench.Witness(AlarmId.PulseWhileIdle).Phase);
    }

    internal static Bench FailedByDoseEnding(SpecSettings? settings = null)
    {
        Bench bench = new Bench(settings).To(Dose);
        bench.Witness(AlarmId.LineNotVented);
        Assert.Equal(Failed, bench.Phase);
        return bench;
    }

    private static void Press(Buttons button, Phase phase, Phase next, bool refused)
    {
        Bench bench = new Bench().To(phase);
        bench.Hold(bench.Inputs.Pressed | button);
        SpecOutputs pressed = bench.Scan();

        Assert.Equal(next, pressed.Phase);
        Assert.Equal(refused ? button : Buttons.None, pressed.Refused);
    }
}

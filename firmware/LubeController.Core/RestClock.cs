using System;

namespace LubeController.Core;

/// <summary>How long the present rest has lasted, by time, by shaft and by a user's rule, and whether it is over.</summary>
internal sealed class RestClock
{
    /// <summary>A rule that asks for less would dose without end.</summary>
    private const int ShortestMs = 1000;

    private readonly Settings _settings;
    private readonly IRestRule? _rule;
    private int _elapsedMs;
    private int _pulses;
    private int _ruleRemainingMs = Saturating.Never;
    private int _ruleRemainingPulses = Saturating.Never;
    private bool _ruleFailed;

    public RestClock(Settings settings, IRestRule? rule)
    {
        _settings = settings;
        _rule = rule;
    }

    /// <summary>Whether the user's rule threw or answered out of range; the fallback time decides until <see cref="TrustRule"/>.</summary>
    public bool RuleFailed => _ruleFailed;

    private bool CountsShaft => _settings.RestMode == RestMode.Shaft || _settings.RestMode == RestMode.Either;

    /// <summary>Beyond it the time rested changes nothing.</summary>
    private int LastLimitMs
    {
        get
        {
            switch (_settings.RestMode)
            {
                case RestMode.Shaft:
                    return _settings[SettingField.RestFallbackMs];
                case RestMode.Rule:
                    int longest = _settings[SettingField.RuleLongestRestMs];
                    int fallback = _settings[SettingField.RestFallbackMs];
                    return longest > fallback ? longest : fallback;
                default:
                    return _settings[SettingField.RestMs];
            }
        }
    }

    private bool RuleAtWork => _rule != null && !_ruleFailed && _settings.RestMode == RestMode.Rule;

    /// <summary>Starts a full rest.</summary>
    public void Begin()
    {
        _elapsedMs = 0;
        _pulses = 0;
        BeginRule();
    }

    /// <summary>After a reset the rule is asked again, from now on.</summary>
    public void TrustRule()
    {
        if (!_ruleFailed)
            return;
        _ruleFailed = false;
        BeginRule();
    }

    public void Advance(int elapsedMs, int shaftPulses, Inputs held)
    {
        _elapsedMs = Saturating.Add(_elapsedMs, elapsedMs);
        _pulses = Saturating.Add(_pulses, shaftPulses);
        if (!RuleAtWork)
            return;
        try
        {
            _rule!.Advance(elapsedMs, shaftPulses, held);
        }
        catch (Exception)
        {
            _ruleFailed = true;
        }
    }

    /// <summary>Asks the rule again; called once in each scan, before <see cref="IsOver"/>.</summary>
    public void AskRule(Inputs inputs)
    {
        if (!RuleAtWork)
            return;
        try
        {
            _ruleRemainingMs = _rule!.RemainingMs(inputs);
            _ruleRemainingPulses = _rule!.RemainingShaftPulses(inputs);
        }
        catch (Exception)
        {
            _ruleFailed = true;
            return;
        }

        int longest = _settings[SettingField.RuleLongestRestMs];
        bool over = _ruleRemainingMs == 0 || _ruleRemainingPulses == 0;
        bool outOfRange = _ruleRemainingMs < 0 || _ruleRemainingMs > longest || _ruleRemainingPulses < 0;
        if (outOfRange || (over ? _elapsedMs < ShortestMs : _elapsedMs >= longest))
            _ruleFailed = true;
    }

    /// <summary>Whether the rest is over.</summary>
    public bool IsOver(bool shaftLost)
    {
        switch (_settings.RestMode)
        {
            case RestMode.Shaft:
                return ShaftOver || (shaftLost && FallbackOver);
            case RestMode.Either:
                return ShaftOver || TimeOver;
            case RestMode.Rule:
                return RuleAtWork ? _ruleRemainingMs == 0 || _ruleRemainingPulses == 0 : FallbackOver;
            default:
                return TimeOver;
        }
    }

    public int DeadlineMs(bool shaftLost)
    {
        switch (_settings.RestMode)
        {
            case RestMode.Shaft:
                return shaftLost ? Saturating.Remaining(_settings[SettingField.RestFallbackMs], _elapsedMs) : Saturating.Never;
            case RestMode.Rule when RuleAtWork:
                return Saturating.Min(
                    _ruleRemainingMs < 1 ? 1 : _ruleRemainingMs,
                    Saturating.Remaining(_settings[SettingField.RuleLongestRestMs], _elapsedMs));
            case RestMode.Rule:
                return Saturating.Remaining(_settings[SettingField.RestFallbackMs], _elapsedMs);
            default:
                return Saturating.Remaining(_settings[SettingField.RestMs], _elapsedMs);
        }
    }

    public int DeadlineShaftPulses()
    {
        switch (_settings.RestMode)
        {
            case RestMode.Shaft:
            case RestMode.Either:
                return Saturating.Remaining(_settings.RestShaftPulses, _pulses);
            case RestMode.Rule when RuleAtWork:
                return _ruleRemainingPulses < 1 ? 1 : _ruleRemainingPulses;
            default:
                return Saturating.Never;
        }
    }

    public void Transfer(StateStream stream)
    {
        _elapsedMs = stream.UpTo(_elapsedMs, LastLimitMs);
        _pulses = stream.UpTo(_pulses, CountsShaft ? _settings.RestShaftPulses : 0);
        _ruleFailed = stream.Flag(_ruleFailed);

        // The rule's last answers are not part of the state: the next scan asks again.
        if (_rule == null)
            return;
        try
        {
            _rule.Transfer(stream);
        }
        catch (Exception)
        {
            _ruleFailed = true;
        }
    }

    private bool TimeOver => _elapsedMs >= _settings[SettingField.RestMs];

    private bool ShaftOver => _pulses >= _settings.RestShaftPulses;

    private bool FallbackOver => _elapsedMs >= _settings[SettingField.RestFallbackMs];

    private void BeginRule()
    {
        if (!RuleAtWork)
            return;
        try
        {
            _rule!.Begin();
        }
        catch (Exception)
        {
            _ruleFailed = true;
        }
    }
}

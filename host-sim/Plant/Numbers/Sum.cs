namespace LubeController.Plant.Numbers;

/// <summary>
/// A running sum that keeps what each addition rounds away (Kahan's compensated summation), so that the volumes of a long
/// run of many small additions still balance.
/// </summary>
internal struct Sum
{
    private double _lost;

    internal double Value { get; private set; }

    internal void Add(double amount)
    {
        double corrected = amount - _lost;
        double next = Value + corrected;
        _lost = (next - Value) - corrected;
        Value = next;
    }

    internal void Set(double value)
    {
        Value = value;
        _lost = 0;
    }
}

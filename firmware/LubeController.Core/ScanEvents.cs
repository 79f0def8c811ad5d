namespace LubeController.Core;

/// <summary>The events of the latest scan, in order. A list of fixed length made once; what does not fit is counted.</summary>
public sealed class ScanEvents
{
    /// <summary>Most events kept of one scan.</summary>
    public const int Capacity = 64;

    private readonly byte[] _kinds = new byte[Capacity];
    private readonly int[] _subjects = new int[Capacity];
    private readonly int[] _details = new int[Capacity];
    private int _count;
    private int _lost;

    /// <summary>Number of events kept.</summary>
    public int Count => _count;

    /// <summary>Number of events that did not fit.</summary>
    public int Lost => _lost;

    /// <summary>Kind of an event, index 0 to <see cref="Count"/> - 1.</summary>
    public ScanEvent Kind(int index) => (ScanEvent)_kinds[index];

    /// <summary>What it is about; see <see cref="ScanEvent"/>.</summary>
    public int Subject(int index) => _subjects[index];

    /// <summary>More about it; see <see cref="ScanEvent"/>.</summary>
    public int Detail(int index) => _details[index];

    internal void Clear()
    {
        _count = 0;
        _lost = 0;
    }

    internal void Add(ScanEvent kind, int subject, int detail)
    {
        if (_count == Capacity)
        {
            _lost = Saturating.Add(_lost, 1);
            return;
        }

        _kinds[_count] = (byte)kind;
        _subjects[_count] = subject;
        _details[_count] = detail;
        _count++;
    }
}

using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// Keeps the settings in two banks. Each setting is kept under a number made of its name, so that settings can be added and
/// moved; one that a bank lacks takes its preset. What is stored goes to the older bank first, is read back, and then goes to
/// the other too, so that one bank that is lost costs nothing.
/// </summary>
public sealed class SettingsMemory
{
    /// <summary>Version of the banks that are written; a newer one is refused.</summary>
    public const int Version = 1;

    private const int Banks = 2;
    private const int HeadLength = 8;
    private const int FieldLength = 8;
    private const int At = BlockRing.HeaderLength;

    private readonly BlockRing _ring;
    private readonly uint[] _names = new uint[SettingField.Count];
    private readonly Settings _values;
    private SettingsState _state;
    private int _stores;

    /// <summary>Reads the newest whole bank.</summary>
    /// <param name="storage">The storage.</param>
    /// <param name="first">The first block.</param>
    public SettingsMemory(IBlockStorage storage, int first)
    {
        for (int field = 0; field < _names.Length; field++)
            _names[field] = NumberOf(SettingTable.Spec(field).Name);
        _ring = new BlockRing(storage, BlockKind.Settings, Version, first, Banks, storage.BlockLength - BlockRing.HeaderLength - BlockRing.FinishLength, true);
        _ring.Load();
        _values = new Settings();
        if (_ring.LoadNewest())
        {
            _stores = (int)ByteOrder.Get(_ring.Frame, At);
            _state = ReadValues() ? SettingsState.Stored : SettingsState.Refused;
        }
        else
        {
            // Of the very first write a cut may leave a torn block; two, or one that was finished, were settings.
            _state = _ring.Written == 0 || (_ring.Written == 1 && _ring.Corrupt == 0 && _ring.Foreign == 0) ? SettingsState.NeverStored : SettingsState.Lost;
        }
    }

    /// <summary>What the banks hold.</summary>
    public SettingsState State => _state;

    /// <summary>The settings as they were read or stored last; presets where none are.</summary>
    public Settings Values => _values;

    /// <summary>Times that settings were stored in the board's life, saturating.</summary>
    public int Stores => _stores;

    /// <summary>The banks.</summary>
    public BlockRing Ring => _ring;

    /// <summary>Settings that every core refuses: in the place of those that cannot be read, so that the pump is interlocked.</summary>
    public static Settings Unreadable()
    {
        var settings = new Settings();
        settings[SettingField.SwitchCount] = -1;
        return settings;
    }

    /// <summary>The number under which a setting is kept: FNV-1a of its name, 32 bits.</summary>
    public static uint NumberOf(string name)
    {
        uint number = 2166136261;
        for (int index = 0; index < name.Length; index++)
            number = unchecked((number ^ name[index]) * 16777619);
        return number;
    }

    /// <summary>Stores settings in both banks.</summary>
    /// <returns>Whether they stand in the first of them, read back; if not, what was stored before still holds.</returns>
    public bool Store(Settings settings)
    {
        int stores = Saturating.Add(_stores, 1);
        if (!Write(settings, stores))
            return false;
        _stores = stores;
        _values.CopyFrom(settings);
        _state = SettingsState.Stored;
        Write(settings, stores);
        return true;
    }

    /// <summary>Rewrites a bank that is not whole, or that a power cut left with older settings.</summary>
    /// <returns>Whether a bank was written.</returns>
    public bool Mend()
    {
        if (_state != SettingsState.Stored)
            return false;
        int other = _ring.Newest == 0 ? 1 : 0;
        if (_ring.LoadBlock(other) && (int)ByteOrder.Get(_ring.Frame, At) == _stores)
            return false;
        return Write(_values, _stores);
    }

    private bool Write(Settings settings, int stores)
    {
        byte[] frame = _ring.Frame;
        ByteOrder.Put(frame, At, (uint)stores);
        ByteOrder.Put(frame, At + 4, SettingField.Count);
        for (int field = 0; field < _names.Length; field++)
        {
            int at = At + HeadLength + (FieldLength * field);
            ByteOrder.Put(frame, at, _names[field]);
            ByteOrder.Put(frame, at + 4, (uint)settings[field]);
        }

        int newest = _ring.Newest;
        if (!_ring.Write(HeadLength + (FieldLength * _names.Length)))
            return false;
        if (_ring.LoadNewest())
            return true;

        // The storage reported success, but the block is not whole: the older settings hold.
        if (newest >= 0)
            _ring.SetNewest(newest);
        return false;
    }

    /// <summary>Takes the values that were read: presets for settings they lack; a setting unknown here refuses them all.</summary>
    private bool ReadValues()
    {
        int count = (int)ByteOrder.Get(_ring.Frame, At + 4);
        if (_ring.LoadedVersion > Version || count < 0 || _ring.LoadedLength != HeadLength + (FieldLength * count))
            return false;
        for (int index = 0; index < count; index++)
        {
            int at = At + HeadLength + (FieldLength * index);
            int field = FieldOf(ByteOrder.Get(_ring.Frame, at), index);
            if (field < 0)
                return false;
            _values[field] = (int)ByteOrder.Get(_ring.Frame, at + 4);
        }

        return true;
    }

    private int FieldOf(uint name, int likely)
    {
        if (likely < _names.Length && _names[likely] == name)
            return likely;
        for (int field = 0; field < _names.Length; field++)
        {
            if (_names[field] == name)
                return field;
        }

        return -1;
    }
}
